#include "sample_text.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

http::Response edit(const json::Json& edits, const std::string& text = orchard_day) {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    return post(desk, "/api/edit", {{"text", text}, {"edits", edits}});
}

std::string edited(const json::Json& one, const std::string& text = orchard_day) {
    const auto answer = edit(json::Json::array({one}), text);
    REQUIRE(answer.status == 200);
    return said(answer)["text"];
}

bool has(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace

TEST_CASE("every kind of edit and of value is taken from the page") {
    CHECK(has(edited({{"path", "day.made"}, {"value", {{"date", "2026-11-02"}}}}),
              "made = 2026-11-02   # a Saturday"));
    CHECK(has(edited({{"path", "package[1].servings"}, {"value", 6}}), "servings = 6\n"));
    CHECK(has(edited({{"path", "package[1].ratio"}, {"value", 0.5}}), "ratio = 0.5\n"));
    CHECK(has(edited({{"path", "package[1].raw"}, {"value", true}}), "raw = true\n"));
    CHECK(has(edited({{"path", "package[1].contains"}, {"value", {"celery", "milk"}}}),
              "contains = [\"celery\", \"milk\"]"));
    CHECK_FALSE(has(edited({{"path", "day.kitchen"}, {"value", nullptr}}), "kitchen"));
    CHECK(has(edited({{"path", "package"}, {"add", {{"dish", ""}, {"servings", 4}}}}),
              "[[package]]\ndish = \"\"\nservings = 4\n"));
    CHECK_FALSE(has(edited({{"path", "package[1]"}, {"remove", true}}), "Barley"));
    const auto twice = edited({{"path", "package[1]"}, {"copy", true}});
    CHECK(has(twice.substr(twice.find("Barley stew") + 1), "Barley stew"));
    const auto moved = edited({{"path", "package[2]"}, {"move", -1}});
    CHECK(moved.find("Celeriac") < moved.find("Barley"));
}

TEST_CASE("up to a hundred edits come at once, and each end of what a number may be") {
    const auto many = [](std::size_t count) {
        auto edits = json::Json::array();
        for (std::size_t i = 0; i < count; ++i) {
            edits.push_back({{"path", "package[1].servings"}, {"value", 6}});
        }
        return edit(edits).status;
    };
    CHECK(many(100) == 200);
    CHECK(many(101) == 400);
    const auto number = [](const json::Json& value) {
        return edit(json::Json::array({{{"path", "package[1].servings"}, {"value", value}}}))
            .status;
    };
    CHECK(number(9223372036854775807) == 200); // TOML 1.0.0, Integer: 64 bits, signed
    CHECK(number(9223372036854775808U) == 400);
    // An object of a date and more is a table, not a date.
    CHECK(has(edited({{"path", "package[1].note"},
                      {"value", {{"date", {{"date", "2026-11-02"}}}, {"by", "Ida"}}}}),
              "date = 2026-11-02"));
}

TEST_CASE("changes count as a script counts, in UTF-16") {
    const std::string text =
        "# Gemüse \xF0\x9F\xA5\x95\n[day]\nmade = 2026-10-17\nkitchen = \"a\"\n";
    const auto answer = said(edit({{{"path", "day.kitchen"}, {"value", "\xF0\x9F\xA5\x95"}},
                                   {{"path", "day.note"}, {"value", "b"}}},
                                  text));
    CHECK(answer["changes"] ==
          json::Json::array({{{"offset", 46}, {"length", 3}, {"text", "\"\xF0\x9F\xA5\x95\""}},
                             {{"offset", 50}, {"length", 0}, {"text", "\nnote = \"b\""}}}));
}

TEST_CASE("what cannot be edited is refused in words, all of it") {
    const auto refused = edit({{{"path", "package[1].dish"}, {"value", "X"}},
                               {{"path", "package[9].dish"}, {"value", "Y"}}});
    CHECK(refused.status == 422);
    CHECK_FALSE(said(refused)["messages"][0]["text"].get<std::string>().empty());
    CHECK(edit({{{"path", "day.made"}, {"value", "x"}}}, "[day\n").status == 422);
    CHECK(edit({{{"path", "day.made"}, {"value", "x"}}}, "\xEF\xBB\xBF[day]\n").status == 422);
}

TEST_CASE("an edit that no page sends is refused") {
    for (const json::Json& edits :
         {json::Json{}, json::Json{3}, json::Json::array({3}),
          json::Json::array({json::Json::object()}),
          json::Json::array({{{"path", 3}, {"value", 1}}}), json::Json::array({{{"path", "day"}}}),
          json::Json::array({{{"path", "day.made"}, {"value", {{"date", "2026-02-30"}}}}}),
          json::Json::array({{{"path", "day.made"}, {"value", {{"date", 3}}}}}),
          json::Json::array({{{"path", "a.b"}, {"value", {1, nullptr}}}}),
          json::Json::array({{{"path", "a.b"}, {"value", 18446744073709551615U}}}),
          json::Json::array({{{"path", "package[1]"}, {"move", "up"}}})}) {
        CAPTURE(edits.dump());
        CHECK(edit(edits).status == 400);
    }
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    CHECK(get(desk, "/api/edit").status == 405);
    CHECK(post(desk, "/api/edit", {{"edits", json::Json::array()}}).status == 400);
}

#include "sample_text.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// A desk with one day, whose number is 1.
struct OneDay {
    FakeMachine fake;
    desk::Desk desk;

    explicit OneDay(const std::string& text = orchard_day)
        : desk{(fake.days["day.toml"] = text, machine_of(fake))} {
        get(desk, "/api/state");
    }
    json::Json day() { return said(get(desk, "/api/day/1")); }
    std::string etag() { return day()["etag"]; }
    http::Response save(const std::string& text, const std::string& etag) {
        return put(desk, "/api/day/1", {{"text", text}}, etag);
    }
};

} // namespace

TEST_CASE("a day is read, saved, and read again as it was saved") {
    OneDay one;
    CHECK(one.day()["text"] == orchard_day);
    CHECK(one.day()["draft"].is_null());
    const auto saved = one.save(orchard_day + "# more\n", one.etag());
    REQUIRE(saved.status == 200);
    CHECK(said(saved)["etag"] == one.etag());
    CHECK(one.fake.days["day.toml"] == orchard_day + "# more\n");
}

TEST_CASE("what another tab or another program has saved meanwhile is never lost") {
    OneDay one;
    const auto first = one.etag();
    REQUIRE(one.save("[day]\n# of one tab\n", first).status == 200);
    auto refused = one.save("[day]\n# of the other\n", first);
    REQUIRE(refused.status == 409);
    CHECK(said(refused)["text"] == "[day]\n# of one tab\n");
    CHECK(said(refused)["etag"] == one.etag());

    one.fake.before_write = [&one] { one.fake.days["day.toml"] = "# of an editor\n"; };
    refused = one.save("[day]\n# of the other\n", one.etag());
    REQUIRE(refused.status == 409);
    CHECK(said(refused)["text"] == "# of an editor\n");
    CHECK(one.fake.days["day.toml"] == "# of an editor\n");

    one.fake.before_write = {};
    CHECK(one.save("[day]\n", {}).status == 409);
}

TEST_CASE("a file that is gone is said to be, and may be put back") {
    OneDay one;
    const auto first = one.etag();
    one.fake.days.clear();
    CHECK(get(one.desk, "/api/day/1").status == 404);
    const auto refused = one.save(orchard_day, first);
    REQUIRE(refused.status == 409);
    CHECK(said(refused)["text"].is_null());
    REQUIRE(one.save(orchard_day, said(refused)["etag"]).status == 200);
    CHECK(one.fake.days["day.toml"] == orchard_day);
}

TEST_CASE("line ends and the mark of a file stay as they were") {
    OneDay one{"\xEF\xBB\xBF[day]\r\nmade = 2026-10-17\r\n"};
    CHECK(one.day()["text"] == "[day]\nmade = 2026-10-17\n");
    REQUIRE(one.save("[day]\nmade = 2026-10-18\n", one.etag()).status == 200);
    CHECK(one.fake.days["day.toml"] == "\xEF\xBB\xBF[day]\r\nmade = 2026-10-18\r\n");
}

TEST_CASE("a draft is kept until it is saved or thrown away") {
    OneDay one;
    const auto keep = [&one](const json::Json& text) {
        return put(one.desk, "/api/draft/1", {{"text", text}}).status;
    };
    REQUIRE(keep("[day]\n# half of a li") == 200);
    CHECK(one.day()["draft"] == "[day]\n# half of a li");
    CHECK(one.day()["text"] == orchard_day);
    REQUIRE(one.save("[day]\n# of another tab\n", one.etag()).status == 200);
    CHECK(one.day()["draft"] == "[day]\n# half of a li");
    REQUIRE(one.save("[day]\n# half of a li", one.etag()).status == 200);
    CHECK(one.day()["draft"].is_null());
    REQUIRE(keep("[day]\n# more") == 200);
    REQUIRE(keep(nullptr) == 200);
    CHECK(one.day()["draft"].is_null());
    REQUIRE(keep(one.day()["text"]) == 200); // nothing to be kept: it is what the file has
    CHECK(one.day()["draft"].is_null());
}

TEST_CASE("a tab that has saved takes its own draft away, and no other tab's") {
    OneDay one;
    const auto take_away = [&one](const char* own) {
        return put(one.desk, "/api/draft/1", {{"text", nullptr}, {"was", own}}).status;
    };
    REQUIRE(put(one.desk, "/api/draft/1", {{"text", "[day]\n# of the first"}}).status == 200);
    REQUIRE(take_away("[day]\n# of the second") == 200);
    CHECK(one.day()["draft"] == "[day]\n# of the first");
    REQUIRE(take_away("[day]\n# of the first") == 200);
    CHECK(one.day()["draft"].is_null());
    CHECK(put(one.desk, "/api/draft/1", {{"text", nullptr}, {"was", 1}}).status == 400);
}

TEST_CASE("a tab writes over its own draft, and over no other tab's") {
    OneDay one;
    const auto keep = [&one](const json::Json& text, const json::Json& was) {
        return put(one.desk, "/api/draft/1", {{"text", text}, {"was", was}});
    };
    REQUIRE(keep("[day]\n# of the first", nullptr).status == 200);
    const auto refused = keep("[day]\n# of the second", nullptr);
    CHECK(refused.status == 409);
    CHECK(said(refused)["draft"] == "[day]\n# of the first");
    CHECK(keep("[day]\n# of the second", "[day]\n# what it has seen").status == 409);
    REQUIRE(keep("[day]\n# of the first, more", "[day]\n# of the first").status == 200);
    REQUIRE(keep("[day]\n# of the first, more", nullptr).status == 200); // the same twice
    CHECK(one.day()["draft"] == "[day]\n# of the first, more");
    REQUIRE(keep(nullptr, "[day]\n# of the first, more").status == 200);
    CHECK(keep("[day]\n# of the second", "[day]\n# what it has seen").status == 200);
}

TEST_CASE("a day is taken away as it was seen, with its draft, and put back") {
    OneDay one;
    const auto remove = [&one](const std::string& etag) {
        auto asked = request(http::Method::Post, "/api/day/1/remove", "{}");
        asked.headers["if-match"] = etag;
        return one.desk.answer(asked);
    };
    const auto first = one.etag();
    REQUIRE(put(one.desk, "/api/draft/1", {{"text", "[day]\n# half"}}).status == 200);
    REQUIRE(one.save("[day]\n# of another tab\n", first).status == 200);
    CHECK(remove(first).status == 409);
    CHECK(one.fake.days.size() == 1);
    const auto removed = remove(one.etag());
    REQUIRE(removed.status == 200);
    CHECK(one.fake.days.empty());
    CHECK(one.fake.drafts.empty());
    CHECK(remove(said(removed)["etag"]).status == 404);
    REQUIRE(one.save(orchard_day, said(removed)["etag"]).status == 200);
    CHECK(one.fake.days["day.toml"] == orchard_day);
}

TEST_CASE("what no page sends about a day is refused") {
    OneDay one;
    const auto etag = one.etag();
    for (const auto* number : {"0", "2", "-1", "1x", "x", "99999999999999", "1.toml"}) {
        CAPTURE(number);
        CHECK(get(one.desk, std::string{"/api/day/"} + number).status == 404);
        CHECK(put(one.desk, std::string{"/api/day/"} + number, {{"text", ""}}, etag).status == 404);
        CHECK(put(one.desk, std::string{"/api/draft/"} + number, {{"text", ""}}).status == 404);
    }
    CHECK(put(one.desk, "/api/day/1", {{"text", 3}}, etag).status == 400);
    CHECK(put(one.desk, "/api/day/1", json::Json::array(), etag).status == 400);
    CHECK(put(one.desk, "/api/day/1", {{"text", std::string("a\0b", 3)}}, etag).status == 400);
    CHECK(put(one.desk, "/api/day/1", {{"text", std::string(1'100'000, '#')}}, etag).status == 400);
    CHECK(put(one.desk, "/api/draft/1", {{"text", true}}).status == 400);
    CHECK(one.desk.answer(request(http::Method::Post, "/api/day/1", "{}")).status == 405);
    CHECK(one.desk.answer(request(http::Method::Post, "/api/draft/1", "{}")).status == 405);
    CHECK(get(one.desk, "/api/draft/1").status == 405);
    CHECK(one.fake.days["day.toml"] == orchard_day);
}

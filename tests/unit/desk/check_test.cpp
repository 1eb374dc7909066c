#include "sample_text.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <set>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct Checking {
    FakeMachine fake;
    desk::Desk desk;

    Checking() : desk{(fake.days["day.toml"] = orchard_day, machine_of(fake))} {
        get(desk, "/api/state");
    }
    json::Json check(const std::string& text, const std::string& what = "labels",
                     const json::Json& look = json::Json::object()) {
        const auto answer = post(desk, "/api/check",
                                 {{"number", 1}, {"text", text}, {"what", what}, {"look", look}});
        CHECK(answer.status == 200);
        return said(answer);
    }
    json::Json sheet(const std::string& text, const json::Json& more = json::Json::object()) {
        json::Json body{{"number", 1}, {"text", text}, {"what", "labels"}};
        body.update(more);
        return said(post(desk, "/api/sheet", body));
    }
    std::string drawn(const json::Json& print) {
        const auto svg = get(desk, "/api/print/" + print["hash"].get<std::string>() + ".svg");
        CHECK(svg.status == 200);
        CHECK(svg.type == "image/svg+xml");
        return svg.body;
    }
};

std::string replaced(std::string text, const std::string& before, const std::string& after) {
    return text.replace(text.find(before), before.size(), after);
}

} // namespace

TEST_CASE("a day is checked: its form, its dishes, and a label of each") {
    Checking checking;
    const auto answer = checking.check(orchard_day);
    CHECK(answer["messages"].empty());
    CHECK(answer["form"]["day"]["made"] == "2026-10-17");
    CHECK(answer["form"]["package"][0]["finish"][0]["add"] == "1 l vegetable stock");
    REQUIRE(answer["packages"].size() == 2);
    CHECK(answer["packages"][0]["bags"].size() == 3);
    REQUIRE(answer["prints"].size() == 2);
    const auto& stew = answer["prints"][0];
    CHECK(stew["kind"] == "label");
    CHECK(stew["dish"] == "Barley stew");
    CHECK(stew["package"] == 1);
    CHECK(stew["copies"] == 3);
    CHECK(stew["size"] == json::Json::array({101.6, 50.8}));
    CHECK(stew["left_out"].empty());
    const auto dish = std::ranges::find_if(
        stew["type"], [](const json::Json& area) { return area["area"] == "dish"; });
    REQUIRE(dish != stew["type"].end());
    CHECK((*dish)["words"] == "at arm's length");
    CHECK(checking.drawn(stew).find("Barley") != std::string::npos);
}

TEST_CASE("what is missing is told at the field that wants it") {
    Checking checking;
    const auto messages =
        checking.check(replaced(orchard_day, "servings", "# servings"))["messages"];
    REQUIRE(messages.size() == 1);
    CHECK(messages[0]["key"] == "package[1].servings");
}

TEST_CASE("a label that stays as it was keeps its hash, and one that changes gets another") {
    Checking checking;
    const auto before = checking.check(orchard_day)["prints"];
    CHECK(checking.check(orchard_day)["prints"] == before);
    const auto after =
        checking.check(replaced(orchard_day, "\"Barley stew\"", "\"Barley stow\""))["prints"];
    CHECK(after[0]["hash"] != before[0]["hash"]);
    CHECK(after[1]["hash"] == before[1]["hash"]);
    CHECK(checking.drawn(before[0]) != checking.drawn(after[0]));
    CHECK(get(checking.desk, "/api/print/0123.svg").status == 404);
}

TEST_CASE("cards and lists are checked as labels are") {
    Checking checking;
    const auto cards = checking.check(orchard_day, "cards")["prints"];
    std::multiset<std::string> kinds;
    for (const auto& card : cards) {
        kinds.insert(card["kind"]);
        checking.drawn(card);
    }
    CHECK(kinds == std::multiset<std::string>{"cook-day card", "cook-day card", "finishing card"});
    const auto lists = checking.check(orchard_day, "lists")["prints"];
    REQUIRE(lists.size() >= 2);
    CHECK(lists[0]["kind"] == "list");
    CHECK(lists[0]["package"].is_null());
    const std::string finished = "[day]\nmade = 2026-10-17\n\n[[package]]\ndish = \"Barley stew\"\n"
                                 "servings = 4\nuse_by = 2026-12-01\n";
    const auto none = checking.check(finished, "finishing_cards");
    CHECK(none["prints"].empty());
    CHECK(none["why_nothing"] == "no dish has a finishing ingredient");
    const auto no_sheet = checking.sheet(finished, {{"what", "finishing_cards"}});
    CHECK(no_sheet["prints"] == 0);
    CHECK(no_sheet["sheets"] == 0);
}

TEST_CASE("a part is checked by what is chosen of it, and copies count") {
    Checking checking;
    auto prints = checking.check(orchard_day, "labels", {{"bags", "2-3"}, {"copies", 2}})["prints"];
    REQUIRE(prints.size() == 1);
    CHECK(prints[0]["dish"] == "Barley stew");
    CHECK(prints[0]["copies"] == 4);
    prints = checking.check(orchard_day, "labels", {{"dishes", "gratin"}})["prints"];
    REQUIRE(prints.size() == 1);
    CHECK(prints[0]["dish"] == "Celeriac gratin");
    const auto wrong = checking.check(orchard_day, "labels", {{"dishes", "porridge"}});
    CHECK(wrong["prints"].empty());
    CHECK(wrong["packages"].size() == 2);
    CHECK(wrong["messages"][0]["severity"] == "error");
}

TEST_CASE("a mistake is told with its key, its line and its length") {
    Checking checking;
    const auto answer = checking.check(replaced(orchard_day, "\"refrigerator\"", "\"fridge box\""));
    REQUIRE(answer["messages"].size() == 1);
    const auto& message = answer["messages"][0];
    CHECK(message["severity"] == "error");
    CHECK(message["key"] == "package[1].thaw.method");
    CHECK(message["line"] == 16);
    CHECK(message["column"] == 10);
    CHECK(message["length"] == 12);
    CHECK(answer["form"]["package"][0]["thaw"]["method"] == "fridge box");
    CHECK(answer["packages"].empty());
    CHECK(answer["prints"].empty());
}

TEST_CASE("a value that is no TOML is null in the form, a lost text has none") {
    Checking checking;
    auto form = checking.check(replaced(orchard_day, "servings = 4", "servings = four"))["form"];
    CHECK(form["package"][0]["servings"].is_null());
    CHECK(form["package"][0]["bags"] == 3);
    form = checking.check("[[package\n" + orchard_day)["form"];
    CHECK(form.is_null());
}

TEST_CASE("what has no room is refused, with the days told all the same") {
    Checking checking;
    const auto answer =
        checking.check(replaced(orchard_day, "\"Barley stew\"", '"' + std::string(75, 'W') + '"'),
                       "labels", {{"stock", "letter-3x10-2.625x1in"}});
    REQUIRE_FALSE(answer["messages"].empty());
    CHECK(answer["messages"][0]["severity"] == "error");
    CHECK(answer["packages"].size() == 2);
    CHECK(answer["prints"].empty());
}

TEST_CASE("every sample is checked, and each of its prints is drawn") {
    Checking checking;
    for (const auto& file : std::filesystem::directory_iterator{THAWSLIP_SOURCE_DIR "/samples"}) {
        if (file.path().extension() == ".toml") {
            CAPTURE(file.path().string());
            const auto answer = checking.check(sample(file.path().filename().string()));
            for (const auto& print : answer["prints"]) {
                CHECK(checking.drawn(print).ends_with("</svg>\n"));
            }
        }
    }
}

TEST_CASE("a sheet is drawn of all labels from the cell that is said") {
    Checking checking;
    const auto sheet = checking.sheet(orchard_day);
    CHECK(sheet["sheets"] == 1);
    CHECK(sheet["prints"] == 4);
    CHECK(sheet["svg"].get<std::string>().starts_with("<?xml"));
    const auto two = checking.sheet(orchard_day, {{"look", {{"first_cell", 9}}}, {"sheet", 2}});
    CHECK(two["sheets"] == 2);
    CHECK(two["svg"].is_string());
    CHECK(checking.sheet(orchard_day, {{"sheet", 2}})["svg"].is_null());
}

TEST_CASE("what no page sends about a check or a sheet is refused") {
    Checking checking;
    for (const auto* path : {"/api/check", "/api/sheet"}) {
        CAPTURE(path);
        const auto status = [&](const json::Json& more) {
            json::Json body{{"number", 1}, {"text", orchard_day}, {"what", "labels"}};
            body.update(more);
            return post(checking.desk, path, body).status;
        };
        CHECK(status({{"what", "stickers"}}) == 400);
        CHECK(status({{"what", nullptr}}) == 400);
        CHECK(status({{"text", nullptr}}) == 400);
        CHECK(status({{"number", "1"}}) == 400);
        CHECK(status({{"look", "large"}}) == 400);
        CHECK(status({{"look", {{"stock", "../etc/passwd"}}}}) == 400);
        CHECK(status({{"look", {{"layout", "mine.toml"}}}}) == 400);
        CHECK(status({{"look", {{"first_cell", -1}}}}) == 400);
        CHECK(status({{"look", {{"first_cell", "first"}}}}) == 400);
        CHECK(status({{"look", {{"skip", {0}}}}}) == 400);
        CHECK(status({{"look", {{"skip", "3"}}}}) == 400);
        CHECK(status({{"look", {{"copies", 0}}}}) == 400);
        CHECK(status({{"look", {{"large_print", "yes"}}}}) == 400);
        CHECK(get(checking.desk, path).status == 405);
    }
    CHECK(post(checking.desk, "/api/sheet",
               {{"number", 1}, {"text", orchard_day}, {"what", "labels"}, {"sheet", 0}})
              .status == 400);
    CHECK(post(checking.desk, "/api/sheet", {{"number", 1}, {"text", "["}, {"what", "labels"}})
              .status == 422);
    CHECK(
        checking.check(orchard_day, "labels", {{"stock", "nothing-like-it"}})["messages"].size() ==
        1);
}

#include "desk/words.h"
#include "sample_text.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

json::Json state_of(FakeMachine& fake) {
    desk::Desk desk{machine_of(fake)};
    const auto state = get(desk, "/api/state");
    REQUIRE(state.status == 200);
    return said(state);
}

json::Json named(const json::Json& list, const char* key, const std::string& value) {
    const auto found =
        std::ranges::find_if(list, [&](const auto& one) { return one[key] == value; });
    REQUIRE(found != list.end());
    return *found;
}

} // namespace

TEST_CASE("the page's state has its words in the language that is set") {
    FakeMachine fake;
    for (const std::string language : {"en", "es", "de"}) {
        fake.settings.language = language;
        const auto state = state_of(fake);
        CHECK(state["language"] == language);
        CHECK(state["words"]["type"].size() == 3);
        CHECK(state["today"] == "2026-10-17");
        CHECK(state["folder"] == "/days");
    }
}

TEST_CASE("the days are those of the state, and come with the day that it is by now") {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    const auto days = said(get(desk, "/api/days"));
    CHECK(days["days"] == said(get(desk, "/api/state"))["days"]);
    CHECK(days["today"] == "2026-10-17");
    CHECK(days.size() == 2);
}

TEST_CASE("allergens and foods have the names of the set language, and ids that a day may have") {
    FakeMachine fake;
    fake.settings.language = "de";
    const auto state = state_of(fake);
    CHECK(named(state["allergens"], "id", "milk")["name"] == "Milch");
    const auto fish = named(state["foods"], "id", "cooked fish");
    CHECK(fish["name"] == "gegarter Fisch");
    CHECK(fish["words"].size() > 3);
    CHECK(named(state["stocks"], "name", "a4-full")["title"] == "A4, das ganze Blatt");
    fake.settings.language = "en";
    CHECK(named(state_of(fake)["foods"], "id", "soup or stew")["name"] == "soup or stew");
}

TEST_CASE("a stock is told by its cells in millimetres and by what it is for") {
    FakeMachine fake;
    const auto labels = named(state_of(fake)["stocks"], "name", "letter-2x5-4x2in");
    CHECK(labels["sheet"] == json::Json::array({215.9, 279.4}));
    REQUIRE(labels["cells"].size() == 10);
    CHECK(labels["cells"][0][2] == 101.6);
    CHECK(labels["cells"][0][3] == 50.8);
    CHECK(labels["roll"] == false);
    CHECK(labels["for"][0] == "labels");
    CHECK(std::ranges::count(labels["for"], "lists") == 0);
    CHECK(labels["usual_for"] == json::Json::array({"labels"}));
}

TEST_CASE("days are listed by their dates, the newest first, and what is no day is not listed") {
    FakeMachine fake;
    fake.days = {{"a.toml", orchard_day},
                 {"b.toml", "[day]\nmade = 2026-11-02\n"},
                 {"broken.toml", "[day\nwhat is this\n"},
                 {"settings.toml", "paper = \"a4\"\n"}};
    fake.drafts = {{"b.toml", "[day]\n"}};
    const auto days = state_of(fake)["days"];
    REQUIRE(days.size() == 3);
    CHECK(days[0]["name"] == "b.toml");
    CHECK(days[0]["number"] == 2);
    CHECK(days[0]["draft"] == true);
    CHECK(days[1]["name"] == "a.toml");
    CHECK(days[1]["made"] == "2026-10-17");
    CHECK(days[1]["dishes"] == json::Json::array({"Barley stew", "Celeriac gratin"}));
    CHECK(days[1]["bags"] == 4);
    CHECK(days[1]["readable"] == true);
    CHECK(days[2]["name"] == "broken.toml");
    CHECK(days[2]["readable"] == false);
    CHECK(days[2]["made"].is_null());
}

TEST_CASE("a day's number stays whatever becomes of other files") {
    FakeMachine fake;
    fake.days = {{"b.toml", orchard_day}, {"c.toml", orchard_day}};
    desk::Desk desk{machine_of(fake)};
    get(desk, "/api/state");
    fake.days.erase("b.toml");
    fake.days["a.toml"] = orchard_day;
    const auto days = said(get(desk, "/api/state"))["days"];
    CHECK(named(days, "name", "c.toml")["number"] == 2);
    CHECK(named(days, "name", "a.toml")["number"] == 3);
    CHECK(get(desk, "/api/day/1").status == 404);
    CHECK(said(get(desk, "/api/day/2"))["name"] == "c.toml");
}

TEST_CASE("no more than a thousand files are looked at") {
    FakeMachine fake;
    for (int i = 0; i < 1100; ++i) {
        fake.days["day" + std::to_string(i) + ".toml"] = "[day]\n";
    }
    CHECK(state_of(fake)["days"].size() == 1000);
}

TEST_CASE("every kind of food and every stock has a name on the page in each language") {
    FakeMachine fake;
    const auto state = state_of(fake);
    for (const std::string language : {"es", "de"}) {
        for (const auto& food : state["foods"]) {
            const auto id = food["id"].get<std::string>();
            CAPTURE(id);
            CHECK_FALSE(desk::name_on_page(desk::Named::Food, id, language, "eu").empty());
        }
        for (const auto& stock : state["stocks"]) {
            const auto name = stock["name"].get<std::string>();
            CAPTURE(name);
            CHECK_FALSE(desk::name_on_page(desk::Named::Stock, name, language, "eu").empty());
        }
    }
}

TEST_CASE("the page's Spanish is that of where food is declared by the list that is set") {
    const auto cold = [](const char* list) {
        return desk::page_words("es", list)["day"]["choice"]["refrigerator"];
    };
    CHECK(cold("eu") == "en el frigorífico");
    CHECK(cold("us") == "en el refrigerador");
}

TEST_CASE("a route's star is one part of a path, and never an empty one") {
    FakeMachine fake;
    fake.days = {{"a.toml", orchard_day}};
    desk::Desk desk{machine_of(fake)};
    get(desk, "/api/state");
    CHECK(get(desk, "/api/day/1").status == 200);
    for (const std::string path : {"/api/day/", "/api/day", "/api/day/1/2", "/api/days/1"}) {
        CAPTURE(path);
        const auto answer = get(desk, path);
        CHECK(answer.status == 404);
        CHECK(said(answer)["messages"][0]["text"] == "there is nothing here");
    }
}

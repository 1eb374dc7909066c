#include "support/asked.h"
#include "support/printed_days.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct FreezerRoutes : PrintedDay {
    using PrintedDay::PrintedDay;

    json::Json list(const json::Json& body = json::Json::object()) {
        return ask("/api/freezer", body);
    }
    std::string id_of(const std::string& words, std::size_t which = 0) {
        return list({{"words", {words}}})["bags"].at(which)["id"].get<std::string>();
    }
    json::Json note(const json::Json& bags, const std::string& state, int status = 200) {
        return ask("/api/freezer/note", {{"bags", bags}, {"state", state}}, status);
    }
};

std::string text_of(const json::Json& answer) {
    return answer["messages"].at(0)["text"].get<std::string>();
}

/// Two dishes with a word in common, the second with letters beyond ASCII.
const std::string two_stews = R"([day]
made = 2026-10-17

[[package]]
dish = "Barley stew"
servings = 4
bags = 2
use_by = 2027-01-17
place = "Gefrierfach über der Tür"

[[package]]
dish = "Stew of chanterelles, Pfälzer Art"
servings = 2
use_by = 2026-12-17
contains = ["milk"]
)";

} // namespace

TEST_CASE("the freezer is listed the soonest first, with totals by dish, month and place") {
    FreezerRoutes printed{two_stews};
    const auto answer = printed.list();
    REQUIRE(answer["bags"].size() == 3);
    CHECK(answer["bags"][0]["dish"] == "Stew of chanterelles, Pfälzer Art");
    CHECK(answer["bags"][0]["contains"] == json::Json{"milk"});
    CHECK(answer["bags"][2]["days_left"] == 92); // 17 October to 17 January
    REQUIRE(answer["totals"].size() == 2);
    CHECK(answer["totals"][0] ==
          json::parsed(R"({"dish":"Barley stew","bags":2,"servings":8,"grams":0,
                                "all_weighed":false})"));
    REQUIRE(answer["months"].size() == 2);
    CHECK(answer["months"][0]["month"] == "2026-12");
    CHECK(answer["months"][1]["month"] == "2027-01");
    CHECK(answer["months"][1]["bags"] == 2);
    REQUIRE(answer["places"].size() == 2);
    CHECK(answer["places"][0]["place"] == "");
    CHECK(answer["places"][1]["place"] == "Gefrierfach über der Tür");
    CHECK(answer["past"] == 0);
    CHECK(answer["messages"].empty());
}

TEST_CASE("words find dishes and places, and what a guest may not eat is named") {
    FreezerRoutes printed{two_stews};
    CHECK(printed.list({{"words", {"TÜR"}}})["bags"].size() == 2);
    CHECK(printed.list({{"words", {"chanter", "stew"}}})["bags"].size() == 1);
    CHECK(printed.list({{"words", {"quince"}}})["bags"].empty());
    const auto there = printed.list({{"place", "Gefrierfach über der Tür"}});
    CHECK(there["bags"].size() == 2);
    CHECK(there["months"].size() == 1);
    CHECK(there["places"].size() == 2); // all there are, to choose from
    CHECK(printed.list({{"place", "Gefrierfach"}})["bags"].empty());
    const auto without = printed.list({{"without", "Milch"}});
    CHECK(without["bags"][0]["named"][0]["where"] == "contains");
    CHECK_FALSE(without["bags"][1].contains("named"));
    CHECK(printed.list({{"without", "asparagus"}})["messages"].size() == 1); // no list knows it
    printed.ask("/api/freezer", {{"without", " , "}}, 422);
}

TEST_CASE("bags are noted as out, back, eaten, discarded and never filled, and it is undone") {
    FreezerRoutes printed;
    const auto id = printed.id_of("squash");
    for (const auto* state : {"out", "frozen", "eaten", "discarded", "never filled"}) {
        CAPTURE(state);
        const auto noted = printed.note({id}, state);
        REQUIRE(noted["bags"].size() == 1);
        CHECK(noted["bags"][0]["id"] == id);
        CHECK(noted["bags"][0]["state"] == state);
    }
    CHECK(printed.list()["bags"].size() == 13);
    CHECK(printed.list({{"gone", true}})["bags"].size() == 14);
    const auto undone = printed.ask("/api/freezer/undo", json::Json::object());
    CHECK(undone["bags"][0]["state"] == "discarded");
    CHECK(undone["bags"][0]["was"]["state"] == "never filled");
}

TEST_CASE("only the change that is meant is taken back") {
    FreezerRoutes printed;
    const auto undo = [&printed](const json::Json& change, int status) {
        return printed.ask("/api/freezer/undo", {{"change", change}}, status);
    };
    const auto squash = printed.id_of("squash");
    const auto mine = printed.note({squash}, "out")["change"];
    const auto other = printed.note({squash}, "eaten")["change"]; // of the same bag, elsewhere
    undo(mine, 409);
    CHECK(printed.list({{"gone", true}, {"words", {"squash"}}})["bags"][0]["state"] == "eaten");
    CHECK(undo(other, 200)["bags"][0]["state"] == "out");
    undo(other, 409); // once is enough
    CHECK(undo(mine, 200)["bags"][0]["state"] == "frozen");
    undo("the last", 400);
}

TEST_CASE("a bag that comes back from thawing is cautioned about") {
    FreezerRoutes printed;
    const auto id = printed.id_of("squash");
    printed.note({id}, "out");
    const auto back = printed.note({id}, "frozen");
    REQUIRE(back["messages"].size() == 1);
    CHECK(back["messages"][0]["severity"] == "caution");
    CHECK(text_of(back).find("must be cooked before it is frozen again") != std::string::npos);
}

TEST_CASE("a place is noted, and one that is no line is refused") {
    FreezerRoutes printed;
    const auto id = printed.id_of("squash");
    const auto moved =
        printed.ask("/api/freezer/note", {{"bags", {id}}, {"place", "Keller, Korb 2 – Süd"}});
    CHECK(moved["bags"][0]["place"] == "Keller, Korb 2 – Süd");
    CHECK(moved["bags"][0]["was"]["place"] == "");
    printed.ask("/api/freezer/note", {{"bags", {id}}, {"place", "two\nlines"}}, 422);
    printed.ask("/api/freezer/note", {{"bags", {id}}, {"place", ""}}, 422);
}

TEST_CASE("words that fit several bags are asked back, and nothing is noted meanwhile") {
    FreezerRoutes printed{two_stews};
    const auto id = printed.id_of("chanterelles");
    const auto asked = printed.note({id, "barley"}, "out", 409);
    REQUIRE(asked["choices"].size() == 2);
    CHECK(asked["choices"][0]["dish"] == "Barley stew");
    CHECK(text_of(asked) == "\"barley\" fits 2 bags; which is meant?");
    CHECK(printed.list()["bags"].size() == 3);
    // A dish's own comma parts no words.
    printed.note({"Stew of chanterelles, Pfälzer Art"}, "out");
    CHECK(printed.list()["bags"].size() == 2);
}

TEST_CASE("bags that nobody knows are refused with what comes near, and nothing is noted") {
    FreezerRoutes printed;
    auto near = printed.id_of("squash");
    near.back() = near.back() == '0' ? '1' : '0';
    const auto refused = printed.note({printed.id_of("pork"), near}, "out", 422);
    CHECK_FALSE(refused["messages"].empty());
    printed.note({"nothing of that kind"}, "out", 422);
    CHECK(printed.list()["bags"].size() == 14);
    printed.ask("/api/freezer/history", {{"bag", "nothing"}}, 422);
}

TEST_CASE("what our page never sends is refused, and changes nothing") {
    FreezerRoutes printed;
    const auto id = printed.id_of("squash");
    printed.note(json::Json::array(), "out", 400);
    printed.note({id}, "melted", 400);
    printed.note({id}, "renamed", 400);
    printed.ask("/api/freezer/note", {{"bags", {id}}}, 400);
    printed.ask("/api/freezer/note", {{"bags", id}, {"state", "out"}}, 400);
    printed.ask("/api/freezer", {{"words", "squash"}}, 400);
    printed.ask("/api/freezer/next", {{"days", 0}}, 400);
    printed.ask("/api/freezer/next", {{"at", "25:00"}}, 400);
    for (const auto* path : {"/api/freezer", "/api/freezer/note", "/api/freezer/undo",
                             "/api/freezer/next", "/api/freezer/history", "/api/archive/backup",
                             "/api/archive/export", "/api/plan", "/api/read"}) {
        CAPTURE(path);
        CHECK(get(printed.desk, path).status == 405);
        CHECK(printed.desk.answer(request(http::Method::Post, path, "[1")).status == 400);
    }
    CHECK(printed.fake.times_backed_up == 0);
    CHECK(printed.list()["bags"].size() == 14);
}

TEST_CASE("before anything was printed the freezer is empty, and notes are refused") {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    const auto list = said(post(desk, "/api/freezer", json::Json::object()));
    CHECK(list["bags"].empty());
    CHECK(list["months"].empty());
    CHECK(said(post(desk, "/api/freezer/next", json::Json::object()))["proposals"].empty());
    CHECK(said(get(desk, "/api/archive"))["prints"].empty());
    CHECK(post(desk, "/api/freezer/undo", json::Json::object()).status == 422);
    CHECK(post(desk, "/api/freezer/note", {{"bags", {"squash"}}, {"state", "out"}}).status == 422);
    CHECK(post(desk, "/api/freezer/history", {{"bag", "K7Q-2M4-9XC"}}).status == 422);
    CHECK_FALSE(std::filesystem::exists(fake.archive_file()));
}

TEST_CASE("the next dinners are proposed, and what is not is counted") {
    FreezerRoutes printed;
    const auto next = printed.ask("/api/freezer/next", {{"days", 9}, {"at", "19:15"}});
    REQUIRE(next["proposals"].size() >= 3);
    CHECK(next["proposals"][0]["eat"].get<std::string>().ends_with("T19:15"));
    CHECK(next["serves"] == 2);
    CHECK(next["proposals"].size() + next["days_left"].get<std::size_t>() +
              next["nothing_thawed_by"].size() ==
          9);
}

TEST_CASE("dinners are for as many days and people as the command takes, and no more") {
    FreezerRoutes printed;
    const auto next = [&printed](const char* key, int number, int status) {
        return printed.ask("/api/freezer/next", {{key, number}, {"at", "18:30"}}, status);
    };
    CHECK(next("days", 1, 200)["proposals"].size() <= 1);
    next("days", 366, 200);
    next("days", 367, 400);
    next("days", 0, 400);
    CHECK(next("serves", 1, 200)["serves"] == 1);
    CHECK(next("serves", 999, 200)["serves"] == 999);
    next("serves", 0, 400);
    next("serves", 1000, 400);
}

TEST_CASE("a meal for which only bags past their date are left says which, and whether raw") {
    FreezerRoutes printed{R"([day]
made = 2026-10-17

[[package]]
dish = "Medlar and barley pot"
servings = 2
weight = "600 g"
thickness = "30 mm"
use_by = 2026-10-18
food = "raw roasts"
thaw.method = "refrigerator"
cook = {in = "pot", time = "20 min", until = "74 °C"}
)"};
    const auto next = printed.ask("/api/freezer/next", {{"days", 5}, {"at", "18:30"}});
    REQUIRE(next["after_date"].size() >= 1);
    const auto& meal = next["after_date"][0];
    CHECK(meal["eat"] == "2026-10-19T18:30"); // the first by which it is thawed
    REQUIRE(meal["bags"].size() == 1);
    CHECK(meal["bags"][0] == json::parsed(R"({"dish":"Medlar and barley pot","raw":true,
                                              "keep_until":"2026-10-18","basis":"use by"})"));
}

TEST_CASE("meals for which nothing can be thawed are named by their times") {
    FreezerRoutes printed{R"([day]
made = 2026-10-17

[[package]]
dish = "Medlar and barley pot"
servings = 2
weight = "2 kg"
thickness = "80 mm"
use_by = 2027-01-17
thaw.method = "refrigerator"
cook = {in = "pot", time = "20 min", until = "74 °C"}
)"};
    const auto next = printed.ask("/api/freezer/next", {{"days", 3}, {"at", "18:30"}});
    REQUIRE(next["nothing_thawed_by"].size() >= 1);
    CHECK(next["nothing_thawed_by"][0] == "2026-10-18T18:30");
}

TEST_CASE("a proposed dinner has its label's whole sentence of thawing, and its allergens") {
    FreezerRoutes printed{R"([day]
made = 2026-10-17

[[package]]
dish = "Medlar and barley pot"
servings = 4
weight = "1 kg"
thickness = "30 mm"
use_by = 2027-01-17
contains = ["milk"]
[package.thaw]
method = "cold water"
[package.cook]
in = "pot"
time = "20 min"
)"};
    const auto next = printed.ask("/api/freezer/next", {{"days", 2}});
    REQUIRE(next["proposals"].size() == 1);
    const auto& dinner = next["proposals"][0];
    const auto words = dinner["thaw_words"].get<std::string>();
    // USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013, cold water; 21 °C: FDA Food Code
    // 2022, 3-501.13.
    for (const auto* condition : {"21 °C (70 °F)", "sealed", "every 30 min", "Cook at once"}) {
        CAPTURE(condition);
        CHECK(words.find(condition) != std::string::npos);
    }
    CHECK(dinner["bags"][0]["contains"] == json::Json{"milk"});
    CHECK(next["avoided"].empty());

    const auto guest = printed.ask("/api/freezer/next", {{"days", 2}, {"without", "milk"}});
    CHECK(guest["proposals"].empty());
    CHECK(guest["avoided"] == json::Json{"Medlar and barley pot"});
    printed.ask("/api/freezer/next", {{"without", " , "}}, 422);
}

TEST_CASE("a bag's history has what was noted, and what was taken back") {
    FreezerRoutes printed;
    const auto id = printed.id_of("pork");
    printed.note({id}, "out");
    printed.ask("/api/freezer/undo", json::Json::object());
    const auto history = printed.ask("/api/freezer/history", {{"bag", id}});
    CHECK(history["dish"] == "Apple and sage pork shoulder");
    REQUIRE(history["events"].size() == 3);
    CHECK(history["events"][1]["state"] == "out");
    CHECK(history["events"][1]["undone"] == true);
    CHECK(history["events"][2]["takes_back"] == true);
}

TEST_CASE("what was printed is listed, the last first, with its bags") {
    FreezerRoutes printed;
    print_labels(printed.fake, two_stews, "2026-10-17T15:30:00", "stews.toml");
    const auto answer = said(get(printed.desk, "/api/archive"));
    REQUIRE(answer["prints"].size() == 2);
    const auto& last = answer["prints"][0];
    CHECK(last["at"] == "2026-10-17T15:30:00");
    CHECK(last["what"] == "labels");
    CHECK(last["days"] == json::Json{"2026-10-17"});
    CHECK(last["dishes"] == json::Json{"Barley stew", "Stew of chanterelles, Pfälzer Art"});
    CHECK(last["bags"].size() == 3);
    CHECK(answer["prints"][1]["bags"].size() == 14);
}

TEST_CASE("a print of a day that was edited since names its bags as they are now") {
    FreezerRoutes printed{two_stews};
    auto edited = two_stews;
    edited.replace(edited.find("servings = 4"), 12, "servings = 6");
    print_labels(printed.fake, edited, "2026-10-17T15:30:00");
    const auto prints = said(get(printed.desk, "/api/archive"))["prints"];
    REQUIRE(prints.size() == 2);
    for (const auto& print : prints) {
        CHECK(print["bags"].size() == 3);
        for (const auto& id : print["bags"]) { // each can be printed again
            CHECK(printed.ask("/api/freezer/history", {{"bag", id}})["id"] == id);
        }
    }
}

TEST_CASE("a print that is made again is listed once, with both times") {
    FreezerRoutes printed{two_stews};
    print_labels(printed.fake, two_stews, "2026-10-19T08:00:00");
    const auto prints = said(get(printed.desk, "/api/archive"))["prints"];
    REQUIRE(prints.size() == 1);
    CHECK(prints[0]["first_at"] == "2026-10-17T11:00:00");
    CHECK(prints[0]["at"] == "2026-10-19T08:00:00");
}

TEST_CASE("a backup and an export are the machine's") {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    for (const auto* path : {"/api/archive/backup", "/api/archive/export"}) {
        const auto answer = said(post(desk, path, json::Json::object()));
        CHECK(answer["done"] == true);
        CHECK(answer["said"] == "printed");
    }
    CHECK(fake.times_backed_up == 2);
}

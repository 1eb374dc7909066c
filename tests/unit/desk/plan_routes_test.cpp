#include "code/message.h"
#include "support/asked.h"
#include "support/printed_days.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

struct PlanRoutes : PrintedDay {
    json::Json plan(json::Json body, int status = 200) {
        body.emplace("eat", "2026-10-24T18:30");
        return ask("/api/plan", body, status);
    }
};

} // namespace

TEST_CASE("bags are planned by their ids, with words, pictures and a calendar") {
    PlanRoutes printed;
    const auto plan = printed.plan({{"bags", {printed.bag("squash").id, "pork"}}});
    CHECK(plan["possible"] == true);
    CHECK(plan["eat"] == "2026-10-24T18:30");
    CHECK(plan["dishes"].size() == 2);
    CHECK(plan["events"].size() > 4);
    REQUIRE(plan["svg"].size() >= 1);
    CHECK(plan["svg"][0].get<std::string>().find("<svg") != std::string::npos);
    CHECK(plan["calendar"].get<std::string>().starts_with("BEGIN:VCALENDAR\r\n"));
    CHECK(plan["text"].get<std::string>().ends_with(
        style_of(printed.fake.settings).say("standing.local-rules") + "\n"));
}

TEST_CASE("a narrow page gets narrow pictures, one for each dish") {
    PlanRoutes printed;
    const json::Json bags = {"squash", "pork", "compote"};
    const auto wide = printed.plan({{"bags", bags}});
    const auto narrow = printed.plan({{"bags", bags}, {"beside", 1}});
    CHECK(wide["svg"].size() == 1);
    CHECK(wide["svg"][0].get<std::string>().find("width=\"300mm\"") != std::string::npos);
    CHECK(narrow["svg"].size() == 3);
    CHECK(narrow["svg"][0].get<std::string>().find("width=\"100mm\"") != std::string::npos);
    const auto one = printed.plan({{"bags", {"pork"}}});
    CHECK(one["svg"][0].get<std::string>().find("width=\"100mm\"") != std::string::npos);
    for (const auto beside : {0, -1, 4}) {
        printed.plan({{"bags", bags}, {"beside", beside}}, 400);
    }
}

TEST_CASE("so many bags of each dish are planned as are asked for") {
    PlanRoutes printed;
    CHECK(printed.plan({{"bags", {"squash"}}})["dishes"][0]["bags"].size() == 1);
    CHECK(printed.plan({{"bags", {"squash"}}, {"each", 3}})["dishes"][0]["bags"].size() == 3);
    printed.plan({{"bags", {"squash"}}, {"each", 0}}, 400);
}

TEST_CASE("the core's course is thawed when the label says so, and goes on until it is cooked") {
    PlanRoutes printed;
    const auto bag = printed.bag("squash");
    const auto plan = printed.plan({{"bags", {bag.id}}});
    const auto label = said(post(printed.desk, "/api/read", {{"typed", bag.id}}))["bags"][0];
    REQUIRE(plan["core"].size() == 1);
    const auto& core = plan["core"][0];
    CHECK(core["dish"] == bag.dish);
    CHECK(core["method"] == "refrigerator");
    CHECK(core["thaw_begins"] == plan["events"][0]["at"]);
    CHECK(core["warmest"] == 4.0);
    CHECK(core["points"][0] == json::parsed("[0, -18.0, -18.0]"));
    const auto first_at = [&core](std::size_t bound) {
        for (const auto& point : core["points"]) {
            if (point[bound].get<double>() >= 0.0) {
                return point[0].get<long>();
            }
        }
        return -1L;
    };
    CHECK(first_at(1) == label["thaw_minutes"].get<long>());
    CHECK(first_at(2) == label["look_from_minutes"].get<long>());
    CHECK(core["points"].back()[0].get<long>() >= label["thaw_minutes"].get<long>());
    CHECK(printed.plan({{"bags", {"chestnut"}}})["core"].empty()); // cooked from frozen
}

TEST_CASE("a dinner that frozen bags cannot be ready for says so, without a drawing of nothing") {
    PlanRoutes printed;
    const auto plan = printed.plan({{"bags", {"pork"}}, {"eat", "2026-10-17T12:05"}});
    CHECK(plan["possible"] == false);
    CHECK(plan["remarks"].size() >= 1);
    CHECK(plan["calendar"].is_null());
    CHECK(plan["svg"].empty());
}

TEST_CASE("a bag is planned by its code, also where the archive does not know it") {
    PlanRoutes printed;
    const auto bag = printed.bag("squash");
    code::Message message;
    message.dish = "Barley stew";
    message.bag_id = "K7Q-2M4-9XC";
    const auto plan = printed.plan({{"texts", {code::write(message)}}});
    CHECK(plan["dishes"][0]["dish"] == "BARLEY STEW");
    REQUIRE(plan["messages"].size() >= 1);
    CHECK(plan["messages"][0]["severity"] == "caution");
    message.dish = bag.dish;
    message.bag_id = bag.id;
    CHECK(printed.plan({{"texts", {code::write(message)}}})["dishes"][0]["dish"] ==
          "Squash and red lentil stew");
    printed.plan({{"texts", {"https://example.org"}}}, 422);
}

TEST_CASE("bags of one dish are one dinner, whether their codes or their ids are told") {
    PlanRoutes printed;
    const auto bags = printed.fake.open_archive().find("squash", archive::Which::All);
    REQUIRE(bags.size() > 1);
    const auto code_of = [](const std::string& dish, const std::string& id) {
        code::Message message;
        message.dish = dish;
        message.bag_id = id;
        return code::write(message);
    };
    const auto by_codes = printed.plan(
        {{"texts", {code_of(bags[0].dish, bags[0].id), code_of(bags[1].dish, bags[1].id)}}});
    const auto by_ids = printed.plan({{"bags", {bags[0].id, bags[1].id}}});
    CHECK(by_ids["dishes"].size() == 1);
    CHECK(by_codes["dishes"] == by_ids["dishes"]);
    CHECK(by_codes["events"] == by_ids["events"]);
}

TEST_CASE("a day is planned by its number") {
    PlanRoutes printed;
    printed.fake.days["autumn.toml"] = orchard_sample();
    const auto number = said(get(printed.desk, "/api/state"))["days"].at(0)["number"].get<int>();
    CHECK(printed.plan({{"number", number}})["dishes"].size() == 5);
    printed.plan({{"number", number + 7}}, 400);
    printed.plan({{"number", -1}}, 400);
    printed.fake.days["autumn.toml"] = "[day]\nmade = tomorrow\n";
    CHECK(printed.plan({{"number", number}}, 422)["messages"].back()["line"] == 2);
}

TEST_CASE("a plan of nothing, of two things at once, or for no time is refused") {
    PlanRoutes printed;
    printed.plan(json::Json::object(), 400);
    printed.plan({{"bags", {"squash"}}, {"number", 0}}, 400);
    printed.plan({{"bags", {"squash"}}, {"eat", "tonight"}}, 400);
    printed.plan({{"bags", {"squash"}}, {"eat", nullptr}}, 400);
    printed.plan({{"bags", {"Grünkohl"}}}, 422);
    FakeMachine empty;
    desk::Desk desk{machine_of(empty)};
    CHECK(post(desk, "/api/plan", {{"bags", {"squash"}}, {"eat", "2026-10-24T18:30"}}).status ==
          422);
}

// What a phone may ask, and what it gets: every route of the desk is tried by one.

#include "desk/phones/phone_door.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>
#include <vector>

using namespace thawslip;
using namespace thawslip::test_support;
using http::Method;
using json::Json;

namespace {

/// A desk, and a phone that was let in.
struct House {
    FakeMachine fake;
    desk::SteadyTime now{std::chrono::hours{12}};
    int texts = 0;
    std::shared_ptr<desk::Phones> phones = std::make_shared<desk::Phones>(
        desk::PhonePlace{
            "http://192.168.1.20:61722", "", [this] { return now; },
            [] { return "2026-10-17T12:00:00"; },
            [this] { return fmt::format("{0:08x}{0:08x}{0:08x}{0:08x}", ++texts * 0x0103'0507); },
            [](const std::vector<desk::Phone>&) {}},
        std::vector<desk::Phone>{});
    desk::Desk desk{[this] {
        auto machine = machine_of(fake);
        machine.phones = phones;
        return machine;
    }()};
    desk::PhoneDoor door{desk, *phones};
    std::string key = phones->pair(phones->offer().code, "Ida's phone").value().key;

    http::Request from_phone(Method method, const std::string& path,
                             const std::string& body) const {
        auto asked = request(method, path, body);
        asked.peer = "192.168.1.31";
        asked.headers = {{"host", "192.168.1.20:61722"}, {"thawslip-key", key}};
        if (method == Method::Post || method == Method::Put) {
            asked.headers["origin"] = "http://192.168.1.20:61722";
            asked.headers["content-type"] = "application/json";
        }
        return asked;
    }
    http::Response ask(Method method, const std::string& path, const Json& body = {}) const {
        return door.answer(from_phone(method, path, body.is_null() ? "" : body.dump()));
    }
};

struct Question {
    std::string path;
    Json body;
    Method method = Method::Post;
};

} // namespace

TEST_CASE_FIXTURE(House, "a phone reads, lists, proposes, plans, and notes what is out or eaten") {
    for (const auto& question :
         std::vector<Question>{{"/api/state", {}, Method::Get},
                               {"/api/changes", {}, Method::Get},
                               {"/api/read", {{"typed", "quince"}}},
                               {"/api/plan", {{"bags", {"quince"}}, {"eat", "2026-12-03T18:30"}}},
                               {"/api/freezer", Json::object()},
                               {"/api/freezer/next", {{"days", 2}, {"at", "18:30"}}},
                               {"/api/freezer/history", {{"bag", "0000-0000"}}},
                               {"/api/freezer/note", {{"bags", {"quince"}}, {"state", "out"}}},
                               {"/api/freezer/note", {{"bags", {"quince"}}, {"state", "eaten"}}}}) {
        CAPTURE(question.path);
        CHECK(ask(question.method, question.path, question.body).status != 403);
    }
}

TEST_CASE_FIXTURE(House, "a phone prints nothing, and sees no file and no setting") {
    const Json bags = {"quince"};
    for (const auto& question : std::vector<Question>{
             {"/api/day/0", {}, Method::Get},
             {"/api/day/0", {{"text", ""}}, Method::Put},
             {"/api/days", {{"from", "blank"}, {"made", "2026-10-17"}}},
             {"/api/draft/0", {{"text", "x"}}, Method::Put},
             {"/api/check", {{"number", 0}, {"text", ""}, {"what", "labels"}}},
             {"/api/edit", {{"text", ""}, {"edits", Json::array()}}},
             {"/api/print/0.svg", {}, Method::Get},
             {"/api/sheet", {{"number", 0}, {"text", ""}, {"what", "labels"}}},
             {"/api/spool", {{"number", 0}, {"what", "labels"}, {"ticket", "x"}}},
             {"/api/out/x.pdf", {}, Method::Get},
             {"/api/reprint", {{"bags", bags}, {"kind", "labels"}, {"ticket", "x"}}},
             {"/api/freezer/door-list", {{"ticket", "x"}}},
             {"/api/freezer/undo", Json::object()},
             {"/api/archive", {}, Method::Get},
             {"/api/archive/backup", Json::object()},
             {"/api/archive/export", Json::object()},
             {"/api/phones", {}, Method::Get},
             {"/api/phones/offer", Json::object()},
             {"/api/phones/take-back", Json::object()},
             {"/api/phones/lock-out", {{"number", 1}}},
             {"/api/key", {{"once", "x"}}},
             {"/api/nothing", {}, Method::Get},
             // What it may ask, asked otherwise.
             {"/api/state", Json::object()},
             {"/api/freezer", {}, Method::Get},
             {"/api/freezer/", Json::object()},
             {"/api//freezer", Json::object()},
             {"/api/plan", {{"number", 0}, {"eat", "2026-12-03T18:30"}}},
             {"/api/freezer/note", {{"bags", bags}, {"state", "discarded"}}},
             {"/api/freezer/note", {{"bags", bags}, {"state", "never filled"}}},
             {"/api/freezer/note", {{"bags", bags}, {"state", "frozen"}}},
             {"/api/freezer/note", {{"bags", bags}, {"place", "cellar"}}},
             {"/api/freezer/note", {{"bags", bags}, {"state", "out"}, {"place", "cellar"}}},
             {"/api/freezer/note", {{"bags", bags}, {"state", Json::array({"out"})}}},
             {"/api/freezer/note", {{"bags", bags}}},
             {"/api/freezer/note", Json::array()}}) {
        CAPTURE(question.path);
        CAPTURE(question.body.dump());
        CHECK(ask(question.method, question.path, question.body).status == 403);
    }
    CHECK(fake.prints.empty());
    CHECK(fake.reprints.empty());
    CHECK(fake.door_lists == 0);
    CHECK(fake.times_backed_up == 0);
    CHECK(fake.drafts.empty());
    CHECK(phones->all().size() == 1);
    CHECK_FALSE(phones->open_offer());
}

TEST_CASE_FIXTURE(House, "what a phone is told of the state is its own and nobody's files") {
    const auto answer = ask(Method::Get, "/api/state");
    REQUIRE(answer.status == 200);
    const auto state = said(answer);
    CHECK(state["phone"]["name"] == "Ida's phone");
    CHECK(state["language"] == "en");
    CHECK(state["words"].is_object());
    for (const std::string member :
         {"folder", "days", "printers", "why_no_printer", "stocks", "paper", "phones"}) {
        CAPTURE(member);
        CHECK_FALSE(state.contains(member));
    }
}

TEST_CASE_FIXTURE(House, "the cook's page shows phones only where they are let in") {
    const auto phones_of = [](desk::Desk& asked) {
        return json::parsed(asked.answer(request(Method::Get, "/api/state", "")).body)["phones"];
    };
    CHECK(phones_of(desk) == true);
    FakeMachine without;
    desk::Desk alone{machine_of(without)};
    CHECK(phones_of(alone) == false);
}

TEST_CASE_FIXTURE(House, "the page itself is for everybody, for it says nothing") {
    CHECK(ask(Method::Get, "/").status == 200);
    CHECK(ask(Method::Get, "/style.css").status == 200);
}

TEST_CASE_FIXTURE(House, "the guard knows phones by their keys, and only those of the house") {
    auto guard = door.guard();
    guard.host = "192.168.1.20:61722";
    const auto status = [&](const http::Request& asked) {
        const auto refused = http::refuse(asked, guard);
        return refused ? refused->status : 0;
    };
    auto asked = from_phone(Method::Post, "/api/freezer", "{}");
    CHECK(status(asked) == 0);
    asked.headers["thawslip-key"] = key + "0";
    CHECK(status(asked) == 401);
    asked.headers.erase("thawslip-key");
    CHECK(status(asked) == 401);
    asked.path = "/api/pair";
    CHECK(status(asked) == 0); // which is how it gets one
    asked.headers["origin"] = "http://orchard.test";
    CHECK(status(asked) == 403);
    asked = from_phone(Method::Post, "/api/freezer", "{}");
    asked.headers["host"] = "orchard.test:61722";
    CHECK(status(asked) == 421);
    asked = from_phone(Method::Post, "/api/freezer", "{}");
    asked.peer = "203.0.113.9"; // RFC 5737, section 3: for documentation
    CHECK(status(asked) == 403);
    asked = from_phone(Method::Post, "/api/freezer", "{}");
    phones->revoke(1);
    CHECK(status(asked) == 401);
    CHECK(said(ask(Method::Get, "/api/state"))["messages"].is_array());
}

TEST_CASE_FIXTURE(House, "a phone is let in by the code on the cook's page, once") {
    const auto offer = said(post(desk, "/api/phones/offer", Json::object()));
    CHECK(offer["seconds"] == 120);
    CHECK(offer["svg"].get<std::string>().starts_with("<svg"));
    const Json asks = {{"code", offer["code"]}, {"name", "Bea's phone"}};
    const auto answer = ask(Method::Post, "/api/pair", asks);
    REQUIRE(answer.status == 200);
    CHECK(phones->with_key(said(answer)["key"].get<std::string>())->name == "Bea's phone");
    CHECK(ask(Method::Post, "/api/pair", asks).status == 403);
    CHECK(ask(Method::Post, "/api/pair", {{"code", "x"}, {"name", " "}}).status == 422);
    CHECK(ask(Method::Post, "/api/pair", {{"code", "x"}}).status == 400);
    CHECK(ask(Method::Post, "/api/pair", Json::array()).status == 400);
    CHECK(ask(Method::Get, "/api/pair").status == 405);
}

TEST_CASE_FIXTURE(House, "a house that is full of phones lets none in until one is locked out") {
    const auto pair = [this](const std::string& name) {
        const auto offer = said(post(desk, "/api/phones/offer", Json::object()));
        now += std::chrono::minutes{2}; // whoever has a code may try it
        const auto fresh = said(post(desk, "/api/phones/offer", Json::object()));
        return ask(Method::Post, "/api/pair", {{"code", fresh["code"]}, {"name", name}});
    };
    while (phones->all().size() < desk::Phones::most) {
        REQUIRE(pair("a phone").status == 200);
    }
    const auto refused = pair("one more");
    CHECK(refused.status == 409);
    CHECK(refused.body.find("lock out one that is gone") != std::string::npos);
    phones->revoke(1);
    CHECK(pair("one more").status == 200);
}

TEST_CASE_FIXTURE(House, "who tries codes too often is told to wait (RFC 6585, section 4)") {
    http::Response answer;
    for (int tries = 0; tries <= desk::Phones::tries_a_minute; ++tries) {
        answer = ask(Method::Post, "/api/pair", {{"code", "0000-0000"}, {"name", "x"}});
    }
    CHECK(answer.status == 429);
    REQUIRE(answer.headers.size() == 1);
    CHECK(answer.headers.front() == std::pair<std::string, std::string>{"Retry-After", "60"});
}

TEST_CASE_FIXTURE(House, "the cook's page lists phones without their keys, and locks one out") {
    const auto listed = get(desk, "/api/phones");
    CHECK(listed.body.find(key) == std::string::npos);
    const auto list = said(listed);
    CHECK(list["origin"] == "http://192.168.1.20:61722");
    CHECK(list["offer"].is_null());
    const Json ida = {{"number", 1}, {"name", "Ida's phone"}, {"paired", "2026-10-17T12:00:00"}};
    CHECK(list["phones"] == Json::array({ida}));
    post(desk, "/api/phones/offer", Json::object());
    CHECK(said(get(desk, "/api/phones"))["offer"]["seconds"] == 120);
    post(desk, "/api/phones/take-back", Json::object());
    CHECK(said(get(desk, "/api/phones"))["offer"].is_null());
    CHECK(said(post(desk, "/api/phones/lock-out", {{"number", 1}}))["phones"].empty());
    CHECK_FALSE(phones->with_key(key));
    CHECK(post(desk, "/api/phones/lock-out", {{"number", 1}}).status == 404);
}

TEST_CASE("a desk that lets no phones in says so") {
    FakeMachine fake;
    desk::Desk desk{machine_of(fake)};
    CHECK(get(desk, "/api/phones").status == 400);
    CHECK(post(desk, "/api/phones/offer", Json::object()).status == 400);
}

// What pages hear of changes: WHATWG, HTML Living Standard, section 9.2, Server-sent events; lines
// as 9.2.5 has them, and data in each event, without which 9.2.6 tells the page nothing.

#include "desk/changes.h"
#include "support/asked.h"
#include "support/fake_machine.h"

#include <doctest/doctest.h>
#include <future>
#include <optional>
#include <thread>

using namespace thawslip;
using namespace thawslip::test_support;
using Cause = desk::Changes::Cause;

namespace {

constexpr std::chrono::milliseconds no_patience{0};
constexpr std::chrono::minutes long_enough{5}; ///< for what comes, or the runner ends the test

struct ListeningDesk {
    FakeMachine fake;
    std::shared_ptr<desk::Changes> changes = std::make_shared<desk::Changes>("run");
    desk::Desk desk{[this] {
        auto machine = machine_of(fake);
        machine.changes = changes;
        return machine;
    }()};
    http::NextPiece listen(const std::string& last_id) {
        auto asked = request(http::Method::Get, "/api/changes");
        asked.headers["last-event-id"] = last_id;
        auto response = desk.answer(asked);
        REQUIRE(response.status == 200);
        CHECK(response.type == "text/event-stream");
        CHECK(response.body == "retry: 30000\n\n"); // where too many listen
        REQUIRE(response.next);
        return response.next;
    }
};

} // namespace

TEST_CASE("who has the state hears nothing until something happens, and then that, and no more") {
    ListeningDesk listening;
    const auto id = said(get(listening.desk, "/api/state"))["changes"].get<std::string>();
    CHECK(id == "run-0");
    const auto next = listening.listen(id);
    CHECK(next(no_patience) == "retry: 1000\n\n");
    CHECK(next(no_patience).empty());
    listening.changes->happened();
    CHECK(next(long_enough) == "id: run-1\nevent: changed\ndata:\n\n");
    CHECK(next(no_patience).empty());
    listening.changes->happened();
    listening.changes->happened(); // are one, for a page that asks again
    CHECK(next(long_enough) == "id: run-3\nevent: changed\ndata:\n\n");
}

TEST_CASE("who comes back after something happened, or from another run, is told at once") {
    ListeningDesk listening;
    listening.changes->happened();
    for (const std::string id : {"run-0", "other-1", ""}) {
        CHECK(listening.listen(id)(no_patience) ==
              "retry: 1000\n\nid: run-1\nevent: changed\ndata:\n\n");
    }
    CHECK(listening.listen("run-1")(no_patience) == "retry: 1000\n\n");
}

TEST_CASE("a change wakes who waits for it") {
    desk::Changes changes;
    std::thread other{[&] { changes.happened(); }};
    CHECK(changes.wait_past(0, long_enough).count == 1);
    other.join();
}

TEST_CASE(
    "whoever watches looks while somebody listens, once where the desk wrote, and rests then") {
    desk::Changes changes;
    changes.look();
    CHECK(changes.wait_for_cause(no_patience) == Cause::Look);
    {
        const desk::Changes::Listener one{changes};
        CHECK(changes.wait_for_cause(long_enough) == Cause::Listen); // at once: it has just come
        const desk::Changes::Listener two{changes};
        CHECK(changes.wait_for_cause(long_enough) == Cause::Listen);
        CHECK(changes.wait_for_cause(no_patience) == Cause::Listen);
        changes.look();
        CHECK(changes.wait_for_cause(long_enough) == Cause::Listen);
    }
    CHECK(changes.wait_for_cause(long_enough) == Cause::Rest);
    changes.end();
    CHECK(changes.wait_for_cause(long_enough) == Cause::End);
}

TEST_CASE(
    "whoever waits for a cause is woken by each, where nobody listens and where somebody does") {
    desk::Changes changes;
    std::optional<desk::Changes::Listener> listener;
    const auto woken_by = [&](const auto& what) {
        auto waits =
            std::async(std::launch::async, [&] { return changes.wait_for_cause(long_enough); });
        waits.wait_for(std::chrono::milliseconds{50}); // till it waits, as a rule
        what();
        return waits.get();
    };
    CHECK(woken_by([&] { changes.look(); }) == Cause::Look);
    CHECK(woken_by([&] { listener.emplace(changes); }) == Cause::Listen);
    CHECK(woken_by([&] { changes.look(); }) == Cause::Listen);
    CHECK(woken_by([&] { listener.reset(); }) == Cause::Rest);
    CHECK(woken_by([&] { changes.end(); }) == Cause::End);
}

TEST_CASE("what the desk notes or prints has the archive looked at") {
    ListeningDesk listening;
    auto& changes = *listening.changes;
    post(listening.desk, "/api/freezer/note", {{"bags", {"nothing"}}, {"state", "out"}});
    CHECK(changes.wait_for_cause(long_enough) == Cause::Look);
    post(listening.desk, "/api/freezer/door-list",
         {{"look", json::Json::object()}, {"ticket", "0123456789abcdef"}});
    CHECK(changes.wait_for_cause(long_enough) == Cause::Look);
}

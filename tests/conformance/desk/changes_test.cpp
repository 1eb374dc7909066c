// What is noted in one place is gone from the list in another: two desks on one file, the command
// line, two stations of one server. Over real sockets and processes; what is waited for comes, or
// the client gives up after a generous while.

#include "running_desk.h"
#ifdef THAWSLIP_WITH_SERVERS
#include "support/postgres.h"
#include "support/skip.h"
#endif

#include <csignal>
#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// A page that listens.
class Ear {
public:
    explicit Ear(const RunningDesk& desk, const std::string& last_id) : client_{desk.port()} {
        client_.send("GET /api/changes HTTP/1.1\r\nHost: " + desk.host() +
                     "\r\nThawslip-Key: " + desk.key() +
                     "\r\nSec-Fetch-Site: same-origin\r\nLast-Event-ID: " + last_id + "\r\n\r\n");
        const auto head = client_.reply();
        REQUIRE(head);
        REQUIRE(head->status == 200);
        CHECK(head->headers.at("content-type") == "text/event-stream");
    }
    explicit Ear(const RunningDesk& desk)
        : Ear{desk, json_of(desk.get("/api/state")).at("changes").get<std::string>()} {}

    /// \returns whether the next event came before the stream ended
    bool hears() {
        while (const auto piece = client_.chunk()) {
            if (piece->empty()) {
                return false;
            }
            if (piece->find("event: changed\ndata:\n\n") != std::string::npos) {
                return true;
            }
        }
        return false;
    }

private:
    Client client_;
};

std::vector<std::string> bags_in(const RunningDesk& desk) {
    const auto freezer = json_of(desk.post("/api/freezer", json::Json::object()));
    std::vector<std::string> ids;
    for (const auto& bag : freezer.at("bags")) {
        ids.push_back(bag.at("id").get<std::string>());
    }
    return ids;
}

bool has_bag(const RunningDesk& desk, const std::string& bag) {
    const auto bags = bags_in(desk);
    return std::find(bags.begin(), bags.end(), bag) != bags.end();
}

/// Waits for events until the list has no such bag: an event may also be of what was before.
bool is_gone(const RunningDesk& desk, Ear& ear, const std::string& bag) {
    while (ear.hears()) {
        if (!has_bag(desk, bag)) {
            return true;
        }
    }
    return false;
}

json::Json taken_out(const std::string& bag) {
    return {{"bags", {bag}}, {"state", "out"}};
}

void print_day(const User& user) {
    fs::copy_file(sample_day, user.day("orchard.toml"));
    const auto printed = user.thawslip("labels " + user.day("orchard.toml") + " -o " +
                                       user.home.path().string() + "/labels.pdf");
    REQUIRE(printed.status == 0);
}

} // namespace

TEST_CASE("two desks on one file: what one notes, or a command, the other hears and shows") {
    const User user;
    print_day(user);
    fs::create_directory(user.home / "other");
    const RunningDesk one{user};
    const RunningDesk other{user, {user.home / "other"}};
    const auto bags = bags_in(other);
    REQUIRE(bags.size() > 2);
    Ear ear{other};
    Ear own{one};
    REQUIRE(one.post("/api/freezer/note", taken_out(bags[0])).status == 200);
    CHECK(is_gone(other, ear, bags[0]));
    CHECK(is_gone(one, own, bags[0])); // its other windows hear it, too
    REQUIRE(user.thawslip("freezer out " + bags[1]).status == 0);
    CHECK(is_gone(other, ear, bags[1]));
    CHECK(is_gone(one, own, bags[1]));
    REQUIRE(one.post("/api/freezer/undo", json::Json::object()).status == 200);
    CHECK(ear.hears());
    CHECK(has_bag(other, bags[1]));
}

TEST_CASE("a desk that ends has its streams end, and one that is listened to is in use") {
    const User user;
    for (const auto* name : {"one", "two"}) {
        fs::create_directory(user.home / name);
    }
    RunningDesk listened_to{user, {user.home / "one", "--idle", "0.03"}};
    Ear ear{listened_to};
    RunningDesk forgotten{user, {user.home / "two", "--idle", "0.03"}};
    CHECK(forgotten.end() == 0);
    CHECK(listened_to.get("/api/state").status == 200);
    listened_to.signal(SIGTERM);
    CHECK_FALSE(ear.hears());
    CHECK(listened_to.end() == 0);
}

TEST_CASE("two stations of one server: what one notes, the other has before its page asks") {
#ifdef THAWSLIP_WITH_SERVERS
    auto* server = test_server();
    if (server == nullptr) {
        skip("this system has no PostgreSQL server");
        return;
    }
    const auto kitchen = server->new_kitchen();
    const auto station = [&](const User& user) {
        fs::create_directories(user.home / ".config/thawslip");
        write_file(user.home / ".config/thawslip/settings.toml",
                   "archive = \"" + server->address_for(kitchen, "packer") + "\"\n");
    };
    const User cellar;
    const User store;
    station(cellar);
    station(store);
    print_day(cellar);
    const RunningDesk one{cellar};
    const RunningDesk other{store};
    const auto bags = bags_in(other);
    REQUIRE(bags.size() > 2);
    Ear ear{other};
    REQUIRE(one.post("/api/freezer/note", taken_out(bags[0])).status ==
            200); // and asks nothing more
    CHECK(is_gone(other, ear, bags[0]));
    server->control("stop -m immediate"); // the line is lost, and comes back
    server->start_again();
    REQUIRE(one.post("/api/freezer/note", taken_out(bags[1])).status == 200);
    CHECK(is_gone(other, ear, bags[1]));
#else
    MESSAGE("skipped: this build opens no archives on servers");
#endif
}

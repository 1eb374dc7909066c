// A kitchen's server calls who listens: PostgreSQL 15, "NOTIFY", "LISTEN", and 34.9, Asynchronous
// Notification. Neither is under row-level security, so what they say is nothing.

#include "archive/changes.h"
#include "archive/exchange.h"
#include "archive/server_sql.h"
#include "samples.h"

#include <fmt/format.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

constexpr std::chrono::seconds long_enough{60}; ///< for what comes, or the test fails
constexpr std::chrono::milliseconds at_once{0};

ServerChanges listening_at(const std::string& address) {
    auto listening = ServerChanges::listen(address, long_enough);
    if (!listening) {
        FAIL(listening.fault().message);
    }
    return std::move(listening).value();
}

const PackageRecord leek = package("Leek soup", 2);

/// What is called comes in the order in which it was, so once a later call is heard there was no
/// earlier one that is still to come.
bool hears_nothing_before(ServerChanges& listening, const std::function<void()>& call) {
    const bool any = listening.hears(at_once);
    call();
    return !any && listening.hears(long_enough) && !listening.hears(at_once);
}

} // namespace

TEST_CASE("who listens at a kitchen hears what is printed and noted there, readers too") {
    const Scratch scratch;
    auto packer = listening_at(scratch.path);
    auto reader = listening_at(required_server().address_for(scratch.path, "reader"));
    opened(scratch.path).record(print({day({leek})}));
    CHECK(packer.hears(long_enough));
    CHECK(reader.hears(long_enough));
    opened(scratch.path).set_state(leek.bags, State::Out, "2026-11-01T18:00:00");
    CHECK(packer.hears(long_enough));
    CHECK(reader.hears(long_enough));
}

TEST_CASE(
    "nobody is called by what adds nothing, so two stations do not call each other for ever") {
    const Scratch scratch;
    const ScratchFolder folder;
    auto server = opened(scratch.path);
    auto station = opened(folder / "station.db");
    station.record(print({day({leek})}));
    auto listening = listening_at(scratch.path);
    exchange(station, server);
    CHECK(listening.hears(long_enough));
    CHECK(hears_nothing_before(listening, [&] {
        exchange(station, server);
        server.merge(station.contents());
        server.set_state(std::vector{leek.bags[0]}, State::Out, "2026-11-01T18:00:00");
    }));
}

TEST_CASE("another kitchen is not heard, nor its channel known, nor what was written") {
    const Scratch ours;
    const Scratch theirs;
    auto listening = listening_at(ours.path);
    CHECK(hears_nothing_before(listening, [&] {
        opened(theirs.path).record(print({day({leek})}));
        opened(ours.path).record(print({day({leek})}));
    }));
    const auto login = [](const std::string& address) {
        const auto start = address.find("//") + 2;
        return address.substr(start, address.find('@') - start);
    };
    for (const std::string sql :
         {"SELECT channel FROM thawslip.kitchen", "SELECT thawslip.hint()"}) {
        CAPTURE(sql);
        CHECK(required_server().sql(sql, login(theirs.path)).status != 0);
    }
    const auto channel = [&](const std::string& address) {
        return required_server().sql("SELECT thawslip.channel_here()", login(address)).out;
    };
    CHECK(channel(ours.path).find("thawslip_") != std::string::npos);
    CHECK(channel(ours.path) != channel(theirs.path));
    const auto heard = required_server().sql(
        "SELECT thawslip.enter('');\nSELECT format('LISTEN %I', thawslip.channel_here()) \\gexec\n"
        "INSERT INTO thawslip.print_key SELECT of_kitchen, 'more', print, at, station FROM "
        "thawslip.print_key LIMIT 1;",
        login(ours.path));
    CAPTURE(heard.err);
    CHECK(heard.out.find("notification") != std::string::npos);
    CHECK(heard.out.find("payload") == std::string::npos); // psql says one that is not empty
}

TEST_CASE("a line that is lost is said so, and a new one hears again") {
    const Scratch scratch;
    auto listening = listening_at(scratch.path);
    required_server().control("stop -m immediate");
    required_server().start_again();
    const auto hears_until_lost = [&] {
        for (;;) {
            listening.hears(long_enough);
        }
    };
    CHECK_THROWS_AS(hears_until_lost(), ArchiveFailure);
    auto again = listening_at(scratch.path);
    opened(scratch.path).record(print({day({leek})}));
    CHECK(again.hears(long_enough));
}

TEST_CASE("a server that is not there is said so in words") {
    const ScratchFolder folder;
    const auto none_there = ServerChanges::listen(
        fmt::format("postgresql:///thawslip?host={}", folder.path().string()), long_enough);
    REQUIRE_FALSE(none_there.ok());
    CHECK(none_there.fault().kind == ArchiveFault::Kind::Away);
}

TEST_CASE("a server of before is led forward, and its kitchens get channels") {
    const auto all = server_sql();
    const auto first = all.substr(0, all.find("DO $step$ BEGIN IF (SELECT version FROM "
                                              "thawslip.about) = 1"));
    REQUIRE(first.size() < all.size());
    const auto led = required_server().sql(
        "CREATE DATABASE before;\n\\connect before\n" + first +
        "COMMIT;\nSELECT thawslip.add_kitchen('Orchard house'), thawslip.add_kitchen('Store');\n" +
        all +
        "SELECT version, (SELECT count(DISTINCT channel) FROM thawslip.kitchen) FROM "
        "thawslip.about;");
    CAPTURE(led.err);
    CHECK(led.status == 0);
    CHECK(led.out.find("2|2") != std::string::npos);
}

// Stations that print on their own and meet at a server: nothing is lost, nothing is doubled,
// whatever is cut or killed in between.

#include "archive/exchange.h"
#include "samples.h"
#include "support/cutting_proxy.h"
#include "support/random.h"

#include <fmt/format.h>
#include <set>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// A computer with its own file, which is a copy of the kitchen's archive.
struct PrintingStation {
    std::string name;
    std::int64_t fast = 0; ///< seconds that its clock is ahead of the true time
    ScratchFolder folder{};
    Archive archive = opened(folder / "station.db");
    std::set<std::string> ids{};
    int prints = 0;

    explicit PrintingStation(std::string called, std::int64_t ahead = 0)
        : name{std::move(called)}, fast{ahead} {
        archive.put_link({"postgresql://store/cold", {}, 0});
    }

    Station now(std::int64_t time) const { return {name, time + fast, -fast}; }

    static std::string written(std::int64_t time) {
        return fmt::format("2026-10-17T{:02}:{:02}:{:02}", time / 3600 % 24, time / 60 % 60,
                           time % 60);
    }

    /// Prints as the program does: ids are settled, and what is out is known here first.
    PrintRecord printed(DayRecord record, std::int64_t time) {
        record.station = name;
        const auto settled = archive.settle(record, {});
        REQUIRE(settled.doubts.empty());
        for (std::size_t i = 0; i < settled.batches.size(); ++i) {
            auto& package = record.packages[i];
            package.batch = settled.batches[i];
            for (std::size_t n = 0; n < package.bags.size(); ++n) {
                package.bags[n] = kitchen::bag_id(
                    {package.dish, package.made, static_cast<int>(n) + 1, package.batch});
                ids.insert(package.bags[n]);
            }
        }
        auto one = print({record}, written(time + fast));
        one.station = now(time);
        one.key = fmt::format("{} {}", name, ++prints);
        archive.record(one);
        return one;
    }
};

/// The address of a server's archive, asked for by a socket in another folder.
std::string address_through(const std::string& folder, std::string address) {
    const auto usual = required_server().socket_folder();
    return address.replace(address.find(usual), usual.size(), folder);
}

std::set<std::string> ids_in(const Contents& contents) {
    std::set<std::string> ids;
    for (const auto& bag : contents.bags) {
        ids.insert(bag.ids.begin(), bag.ids.end());
    }
    return ids;
}

std::size_t keys_in(const Contents& contents) {
    std::size_t keys = 0;
    for (const auto& print : contents.prints) {
        keys += print.keys.size();
    }
    return keys;
}

DayRecord pot(const std::string& station, int number) {
    return day({package(fmt::format("Pot {} of {}", number, station), 2)},
               fmt::format("/orchard/{}.toml", number));
}

} // namespace

TEST_CASE("two stations that print one text while the server is away print different ids") {
    const Scratch scratch;
    PrintingStation one{"one"};
    PrintingStation two{"two"};
    const auto text = day({package("Squash and red lentil stew", 3)});
    one.printed(text, 50'000);
    two.printed(text, 50'010);
    CHECK(one.ids.size() == 3);
    for (const auto& id : one.ids) {
        CHECK_FALSE(two.ids.contains(id));
    }
    auto server = opened(scratch.path);
    CHECK(exchange(one.archive, server).sent.bags == 3);
    const auto second = exchange(two.archive, server);
    CHECK(second.sent.bags == 3);
    CHECK(second.fetched.bags == 3);
    CHECK(exchange(one.archive, server).fetched.bags == 3);
    CHECK(server.bags(Which::InFreezer).size() == 6);
    CHECK(one.archive.bags(Which::InFreezer).size() == 6);
    CHECK(server.check().empty());
    const auto again = exchange(one.archive, server);
    CHECK(again.sent.days + again.sent.bags + again.sent.prints + again.sent.states == 0);
    CHECK(again.fetched.days + again.fetched.bags + again.fetched.prints == 0);
    // The same text at the same station is the same bags, now as before.
    const auto known = one.printed(text, 60'000);
    CHECK(one.ids.size() == 3);
}

TEST_CASE("of two prints of one month, each made at its station, both come to all") {
    const Scratch scratch;
    auto server = opened(scratch.path);
    PrintingStation one{"one"};
    PrintingStation two{"two"};
    for (int number = 1; number <= 4; ++number) { // so many that not simply all is sent
        one.printed(pot("one", number), 40'000 + number);
    }
    exchange(one.archive, server);
    exchange(two.archive, server);
    for (auto* station : {&one, &two}) { // under keys as the archive makes them, of one length
        auto record = pot(station->name, 5);
        record.station = station->name;
        auto made = print({with_ids(record, station->archive.settle(record, {}).batches)});
        made.station = station->now(50'000);
        station->archive.record(made);
    }
    CHECK(exchange(one.archive, server).sent.prints == 1);
    const auto second = exchange(two.archive, server);
    CHECK(second.sent.prints == 1);
    CHECK(second.fetched.prints == 1);
    CHECK(exchange(one.archive, server).fetched.prints == 1);
    for (auto* archive : {&server, &one.archive, &two.archive}) {
        CHECK(keys_in(archive->contents()) == 6);
        CHECK(archive->prints_on(date(2026, 10, 17)).size() == 6);
    }
}

TEST_CASE("clocks that are apart lose no state: the last by true time holds everywhere") {
    const Scratch scratch;
    auto server = opened(scratch.path);
    PrintingStation fast{"fast", 15 * 60};
    PrintingStation slow{"slow", -15 * 60};
    const auto ids =
        fast.printed(day({package("Chestnut soup", 1)}), 36'000).days[0].packages[0].bags;
    exchange(fast.archive, server);
    exchange(slow.archive, server);
    fast.archive.set_state(ids, State::Out, PrintingStation::written(37'000), fast.now(37'000));
    slow.archive.set_state(ids, State::Eaten, PrintingStation::written(37'300), slow.now(37'300));
    exchange(slow.archive, server);
    exchange(fast.archive, server);
    exchange(slow.archive, server);
    CHECK(server.bag(ids[0])->state == State::Eaten);
    CHECK(fast.archive.bag(ids[0])->state == State::Eaten);
    CHECK(slow.archive.bag(ids[0])->state == State::Eaten);
}

TEST_CASE("a server that is asked for within a budget answers within it, and not with none") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({package("Chestnut soup", 2)})}));
    auto reached = Archive::reach(scratch.path, std::chrono::minutes{1});
    REQUIRE(reached.ok());
    auto archive = std::move(reached).value();
    CHECK(archive.bags(Which::All).size() == 2);
    const auto late = Archive::reach(scratch.path, std::chrono::milliseconds{0});
    REQUIRE_FALSE(late.ok());
    CHECK(late.fault().kind == ArchiveFault::Kind::Away);
    const auto nothing = Archive::reach("postgresql://store/cold?password=x", {});
    REQUIRE_FALSE(nothing.ok());
    CHECK(nothing.fault().kind == ArchiveFault::Kind::CannotOpen);
    // As a copy it is read once, and what is noted in that reaches nobody.
    auto copy = opened(scratch.path, Mode::Copy);
    copy.set_state(package("Chestnut soup", 2).bags, State::Eaten, "2026-11-01T18:00:00");
    CHECK(copy.bags(Which::InFreezer).empty());
    CHECK(archive.bags(Which::InFreezer).size() == 2);
    CHECK_FALSE(archive.link().has_value());
    CHECK_THROWS_AS(archive.back_up(scratch.folder / "copy.db"), ArchiveFailure);
}

TEST_CASE("a server or a station that is put back to before gets all that it has lost") {
    const Scratch before;
    PrintingStation one{"one"};
    auto server = opened(before.path);
    for (int i = 0; i < 5; ++i) {
        one.printed(pot("one", i), 40'000 + i);
    }
    exchange(one.archive, server);
    const Scratch put_back; // a kitchen that has nothing of it
    auto restored = opened(put_back.path);
    CHECK(exchange(one.archive, restored).sent.bags == 10);
    PrintingStation emptied{"one"};
    CHECK(exchange(emptied.archive, restored).fetched.bags == 10);
    CHECK(ids_in(emptied.archive.contents()) == one.ids);
    CHECK(restored.check().empty());
}

TEST_CASE("a list takes one round trip, recording three, and an exchange few of many bags") {
    const Scratch scratch;
    const ScratchFolder folder;
    CuttingProxy proxy{required_server().socket_folder() + "/.s.PGSQL.5432",
                       folder / ".s.PGSQL.5432"};
    auto server = opened(address_through(folder.path().string(), scratch.path));
    const auto trips_of = [&proxy](const auto& ask) {
        const int before = proxy.round_trips();
        ask();
        return proxy.round_trips() - before;
    };
    std::vector<PackageRecord> packages;
    for (int i = 0; i < 10; ++i) {
        packages.push_back(package(fmt::format("Chestnut soup {}", i), 20));
    }
    const auto first = day(packages);
    CHECK(trips_of([&] { CHECK(server.record(print({first})).new_bags == 200); }) == 3);
    CHECK(trips_of([&] { CHECK(server.bags(Which::InFreezer).size() == 200); }) == 1);
    CHECK(trips_of([&] { CHECK(server.find("Chest", Which::InFreezer).size() == 200); }) == 1);
    CHECK(trips_of([&] { CHECK(server.bag(first.packages[3].bags[4])); }) <= 3);

    PrintingStation one{"one"};
    const auto trips_to_exchange = [&] {
        return trips_of([&] { CHECK_FALSE(exchange(one.archive, server).unsent); });
    };
    trips_to_exchange();
    const int nothing_new = trips_to_exchange();
    CHECK(nothing_new <= 6);
    CHECK(proxy.passed(CuttingProxy::Direction::ToProgram) > 0);
    std::vector<std::string> ids;
    for (const auto& bag : one.archive.bags(Which::InFreezer)) {
        ids.push_back(bag.id);
    }
    REQUIRE(ids.size() == 200);
    one.archive.set_state({&ids[0], 1}, State::Out, PrintingStation::written(50'000),
                          one.now(50'000));
    const int of_one = trips_to_exchange();
    one.archive.set_state(ids, State::Eaten, PrintingStation::written(51'000), one.now(51'000));
    const int of_all = trips_to_exchange();
    CHECK(of_one <= 20);
    CHECK(of_all <= of_one + 2);
    CHECK(server.bags(Which::InFreezer).empty());
    one.printed(day({package("Leek soup", 200)}, "/orchard/sunday.toml"), 52'000);
    CHECK(trips_to_exchange() <= 20);
    CHECK(server.check().empty());
}

TEST_CASE("a server that stops answering is left after its time, and nothing is lost") {
    const Scratch scratch;
    const ScratchFolder folder;
    CuttingProxy proxy{required_server().socket_folder() + "/.s.PGSQL.5432",
                       folder / ".s.PGSQL.5432"};
    const auto address = address_through(folder.path().string(), scratch.path);
    PrintingStation one{"one"};
    one.printed(pot("one", 1), 40'000);
    for (const std::int64_t after : {0, 300, 1500, 3000}) {
        proxy.cut(CuttingProxy::Direction::ToProgram, after, CuttingProxy::How::Hold);
        auto reached = Archive::reach(address, std::chrono::milliseconds{200});
        if (reached) {
            auto server = std::move(reached).value();
            CHECK_THROWS_AS(exchange(one.archive, server), ArchiveFailure);
        } else {
            CHECK(reached.fault().kind == ArchiveFault::Kind::Away);
        }
    }
    proxy.pass_everything();
    auto server = opened(scratch.path);
    exchange(one.archive, server);
    CHECK(ids_in(server.contents()) == one.ids);
}

TEST_CASE("of two stations' prints none is lost and none doubled by 500 cuts and 12 dead servers") {
    const Scratch scratch;
    const ScratchFolder folder;
    CuttingProxy proxy{required_server().socket_folder() + "/.s.PGSQL.5432",
                       folder / ".s.PGSQL.5432"};
    const auto address = address_through(folder.path().string(), scratch.path);
    Random random{18};
    std::array<PrintingStation, 2> stations{PrintingStation{"one", 900},
                                            PrintingStation{"two", -900}};
    int prints = 0;
    std::int64_t time = 20'000;
    std::array<std::int64_t, 2> usual = {4'000, 4'000}; // bytes of the last exchange that was whole
    int dead = 0;
    for (int turn = 0; proxy.cuts() < 500 && turn < 3'000; ++turn) {
        ++time;
        auto& station = stations[random.below(2)];
        if (random.below(4) == 0) {
            station.printed(pot(station.name, prints++), time);
        } else if (const auto bags = station.archive.bags(Which::InFreezer); !bags.empty()) {
            const std::vector<std::string> ids = {bags[random.below(bags.size())].id};
            station.archive.set_state(ids, State::Out, PrintingStation::written(time),
                                      station.now(time));
        }
        const auto way = random.below(2);
        proxy.cut(
            way == 0 ? CuttingProxy::Direction::ToServer : CuttingProxy::Direction::ToProgram,
            static_cast<std::int64_t>(random.below(static_cast<std::size_t>(usual[way] * 9 / 8))));
        if (turn % 40 == 39) {
            required_server().control("stop -m immediate"); // as a loss of power, to the server
            required_server().start_again();
            ++dead;
        }
        auto reached = Archive::reach(address, std::chrono::seconds{20});
        if (!reached) {
            continue;
        }
        try {
            auto server = std::move(reached).value();
            exchange(station.archive, server);
            usual = {proxy.passed(CuttingProxy::Direction::ToServer),
                     proxy.passed(CuttingProxy::Direction::ToProgram)};
        } catch (const ArchiveFailure& failure) {
            CAPTURE(failure.what());
            CHECK(failure.fault().kind == ArchiveFault::Kind::Away);
        }
    }
    CHECK(proxy.cuts() >= 500);
    CHECK(dead >= 12);
    auto server = opened(scratch.path);
    for (int round = 0; round < 2; ++round) {
        for (auto& station : stations) {
            CHECK_FALSE(exchange(station.archive, server).unsent);
        }
    }
    auto ids = stations[0].ids;
    ids.insert(stations[1].ids.begin(), stations[1].ids.end());
    CHECK(prints > 50);
    for (auto* archive : {&server, &stations[0].archive, &stations[1].archive}) {
        const auto contents = archive->contents();
        CHECK(ids_in(contents) == ids);
        CHECK(contents.bags.size() == ids.size());
        CHECK(keys_in(contents) == static_cast<std::size_t>(prints));
        CHECK(archive->check().empty());
        const auto frozen = archive->bags(Which::InFreezer);
        const auto frozen_there = server.bags(Which::InFreezer);
        CHECK(std::ranges::equal(frozen, frozen_there, {}, &Bag::id, &Bag::id));
    }
}

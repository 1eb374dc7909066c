// What one archive has and another has not: all of it, and little else.

#include "archive/exchange.h"
#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>

namespace part_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

PackageRecord pot(int number) {
    return package(fmt::format("Pot {}", number), 3);
}

DayRecord day_of(int number) {
    return day({pot(number)}, fmt::format("/orchard/{}.toml", number));
}

/// Two archives that hold the same six days, each of its month.
struct Two {
    Scratch scratch;
    Archive here = opened(scratch.path);
    Archive there = opened(scratch.folder / "there.db");

    Two() {
        for (int number = 1; number <= 6; ++number) {
            here.record(print({day_of(number)}, fmt::format("2026-{:02}-17T14:05:00", number)));
        }
        send();
    }
    /// \returns what was missing, which is there now
    Contents send() {
        auto missing = here.missing_in(there);
        there.merge(missing);
        CHECK(there.contents() == here.contents());
        const auto left = here.missing_in(there);
        CHECK(left.days.size() + left.bags.size() + left.prints.size() == 0);
        return missing;
    }
    void note(const std::string& id, State state, const Station& station = {"desk"}) {
        here.set_state(std::vector{id}, state, "2026-11-01T18:00:00", station);
    }
};

} // namespace

TEST_CASE_FIXTURE(Two, "of archives that hold the same nothing is missing, either way") {
    const auto left = there.missing_in(here);
    CHECK(left.days.empty());
    CHECK(left.bags.empty());
    CHECK(left.prints.empty());
}

TEST_CASE_FIXTURE(Two, "of a note its bag alone is missing, with the day that it is of") {
    const auto id = pot(4).bags[1];
    note(id, State::Out);
    const auto missing = send();
    REQUIRE(missing.bags.size() == 1);
    CHECK(missing.bags[0].ids == std::vector{id});
    REQUIRE(missing.days.size() == 1);
    CHECK(missing.days[0].record.description == day_of(4).description);
    CHECK(missing.prints.empty());
}

TEST_CASE_FIXTURE(Two, "of two hundred commands whichever is missing is sent, and no other") {
    for (int command = 0; command < 200; ++command) {
        note(pot(1 + command % 6).bags[0], command / 6 % 2 == 0 ? State::Out : State::Frozen);
    }
    send();
    const auto before = there.contents();
    for (int more = 0; more < 70; ++more) { // across the ends of what is compared together
        CAPTURE(more);
        const auto id = pot(1 + more % 6).bags[2];
        note(id, more / 6 % 2 == 0 ? State::Eaten : State::Out, {more % 3 == 0 ? "stove" : "desk"});
        const auto missing = here.missing_in(there);
        REQUIRE(missing.bags.size() == 1);
        CHECK(missing.bags[0].ids == std::vector{id});
        there.merge(missing);
    }
    CHECK(there.contents() == here.contents());
    // One that has lost all of them gets them all.
    auto restored = opened(scratch.folder / "restored.db");
    restored.merge(before);
    restored.merge(here.missing_in(restored));
    CHECK(restored.contents() == here.contents());
}

TEST_CASE_FIXTURE(Two, "of a print that was made again no bag is missing") {
    here.record(print({day_of(2)}, "2026-11-02T10:00:00"));
    const auto missing = send();
    CHECK(missing.bags.empty());
    REQUIRE(missing.prints.size() == 1);
    CHECK(missing.prints[0].keys.size() == 2);
    REQUIRE(missing.days.size() == 1);
    CHECK(missing.days[0].record.description == day_of(2).description);
}

TEST_CASE_FIXTURE(Two,
                  "of an edited day its revisions and its bags are missing, of others nothing") {
    auto edited = day_of(5);
    edited.description += "# edited\n";
    here.record(print({edited}, "2026-11-02T10:00:00"));
    const auto missing = send();
    CHECK(missing.days.size() == 2);
    CHECK(missing.bags.size() == 3);
    CHECK(missing.prints.size() == 1);
}

TEST_CASE_FIXTURE(Two, "of a new day all is missing, also of the month of another") {
    here.record(print({day_of(7)}, "2026-06-17T15:00:00"));
    const auto missing = send();
    CHECK(missing.days.size() == 1);
    CHECK(missing.bags.size() == 3);
    CHECK(missing.prints.size() == 1);
    auto empty = opened(scratch.folder / "empty.db");
    empty.merge(here.missing_in(empty));
    CHECK(empty.contents() == here.contents());
}

TEST_CASE_FIXTURE(Two, "two archives that go on apart come to hold the same by one exchange") {
    note(pot(1).bags[0], State::Out);
    here.record(print({day_of(8)}, "2026-11-02T10:00:00"));
    there.set_state(std::vector{pot(3).bags[0]}, State::Eaten, "2026-11-01T19:00:00", {"barn"});
    there.record(print({day_of(9)}, "2026-11-02T11:00:00"));
    const auto exchanged = exchange(here, there);
    CHECK_FALSE(exchanged.unsent.has_value());
    CHECK(exchanged.sent.days == 1);
    CHECK(exchanged.sent.bags == 3);
    CHECK(exchanged.sent.states == 1);
    CHECK(exchanged.sent.prints == 1);
    CHECK(exchanged.fetched.days == 1);
    CHECK(exchanged.fetched.bags == 3);
    CHECK(exchanged.fetched.states == 1);
    CHECK(exchanged.fetched.prints == 1);
    CHECK(here.bags(Which::All).size() == 24);
    CHECK(here.bag(pot(3).bags[0])->state == State::Eaten);
    CHECK(there.bag(pot(1).bags[0])->state == State::Out);
    // Prints are known by keys of one length, and each archive has as many of the month.
    for (const int number : {8, 9}) {
        CAPTURE(number);
        for (auto* one : {&here, &there}) {
            CHECK(one->prints_of(one->bag(pot(number).bags[0])->day).size() == 1);
        }
    }
    const auto again = exchange(here, there);
    CHECK(again.sent.days + again.sent.bags + again.sent.prints + again.sent.states == 0);
    CHECK(again.fetched.days + again.fetched.bags + again.fetched.prints == 0);
}

TEST_CASE_FIXTURE(Two, "where nothing may be sent, what is new there is fetched all the same") {
    here.record(print({day_of(8)}, "2026-11-02T10:00:00"));
    there.record(print({day_of(9)}, "2026-11-02T11:00:00"));
    auto reader = opened(scratch.folder / "there.db", Mode::Read);
    const auto exchanged = exchange(here, reader);
    REQUIRE(exchanged.unsent.has_value());
    CHECK(exchanged.unsent->kind == ArchiveFault::Kind::ReadOnly);
    CHECK(exchanged.sent.days == 0);
    CHECK(exchanged.fetched.days == 1);
    CHECK(here.bag(pot(9).bags[0]).has_value());
    CHECK_FALSE(there.bag(pot(8).bags[0]).has_value());
}

} // namespace part_test

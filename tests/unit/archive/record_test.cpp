// What a print, a note and a command that is taken back leave in the archive.

#include "archive/relabelled.h"
#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <functional>
#include <utility>

namespace record_test {

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

const PackageRecord stew = package("Squash and red lentil stew", 3);
const PackageRecord soup = package("Chestnut and kale soup", 2, date(2026, 11, 1));

DayRecord edited(DayRecord day, const std::string& more = "# edited\n") {
    day.description += more;
    return day;
}

std::size_t times_printed(const Contents& contents) {
    std::size_t times = 0;
    for (const auto& print : contents.prints) {
        times += print.keys.size();
    }
    return times;
}

using Pairs = std::vector<std::pair<std::string, std::string>>;

} // namespace

TEST_CASE("two prints of one second that differ in anything are two, and the same is one") {
    const std::pair<const char*, std::function<void(PrintRecord&)>> cases[] = {
        {"what it is", [](PrintRecord& one) { one.setup.what = "cards"; }},
        {"its stock", [](PrintRecord& one) { one.setup.stock = "a4-2x4-99x68mm"; }},
        {"its layout", [](PrintRecord& one) { one.setup.layout = "wide"; }},
        {"its settings", [](PrintRecord& one) { one.setup.settings = "first_cell = 2\n"; }},
        {"its faces", [](PrintRecord& one) { one.setup.look = "face 2\n"; }},
    };
    for (const auto& [what, change] : cases) {
        CAPTURE(what);
        const Scratch scratch;
        auto archive = opened(scratch.path);
        const auto first = archive.record(print({day({stew})}));
        CHECK(first.is_first_print);
        CHECK(first.print_is_new);
        auto other = print({day({stew})});
        change(other);
        const auto recorded = archive.record(other);
        CHECK_FALSE(recorded.is_known);
        CHECK(recorded.print_is_new);
        CHECK_FALSE(recorded.is_first_print);
        CHECK(archive.record(other).is_known);
        CHECK(archive.record(print({day({stew})})).is_known);
        CHECK(archive.contents().prints.size() == 2);
        CHECK(times_printed(archive.contents()) == 2);
    }
}

TEST_CASE("the same print of another second, station or file counts once more") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    CHECK_FALSE(archive.record(print({day({stew})}, "2026-10-17T14:05:01")).is_known);
    auto elsewhere = print({day({stew})});
    elsewhere.station.name = "desk";
    CHECK_FALSE(archive.record(elsewhere).is_known);
    CHECK_FALSE(archive.record(print({day({stew}, "/barn/saturday.toml")})).is_known);
    const auto contents = archive.contents();
    CHECK(contents.prints.size() == 1);
    CHECK(times_printed(contents) == 4);
    CHECK(contents.days.size() == 1);
    CHECK(contents.prints[0].last_at == "2026-10-17T14:05:00"); // when it was last made
}

TEST_CASE("what is edited and edited back within a second is each time a print") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto before = day({stew});
    const auto after = edited(before);
    const auto other = day({soup}, "/orchard/sunday.toml"); // printed along, and never edited
    for (int turn = 0; turn < 3; ++turn) {
        CAPTURE(turn);
        CHECK_FALSE(archive.record(print({before, other})).is_known);
        CHECK_FALSE(archive.record(print({after, other})).is_known);
        CHECK(archive.record(print({after, other})).is_known);
    }
    const auto revisions = archive.revisions(1);
    REQUIRE(revisions.size() == 6);
    CHECK(revisions.back().description == after.description);
    CHECK(revisions[4].description == before.description);
    CHECK(times_printed(archive.contents()) == 6);
    CHECK(archive.bags(Which::All).size() == 5);
    CHECK(archive.check().empty());
}

TEST_CASE("an edited description holds although the clock was set back, in a merge as well") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto longer = stew;
    longer.keep_until = date(2027, 1, 1);
    archive.record(print({day({stew})}, "2026-10-17T14:05:00"));
    archive.record(print({edited(day({longer}))}, "2020-01-01T00:00:00"));
    auto other = opened(scratch.folder / "other.db");
    auto contents = archive.contents();
    REQUIRE(contents.days.size() == 2);
    CHECK(contents.days[1].ordered == contents.days[0].ordered + 1);
    std::swap(contents.days[0].revision, contents.days[1].revision); // whatever it was called
    std::ranges::reverse(contents.days);
    for (auto& bag : contents.bags) {
        bag.day = 1 - bag.day;
    }
    for (auto& print : contents.prints) {
        print.days.front() = 1 - print.days.front();
    }
    other.merge(contents);
    for (auto* one : {&archive, &other}) {
        CHECK(one->bag(stew.bags[0])->keep_until == date(2027, 1, 1));
        REQUIRE(one->revisions(1).size() == 2);
        CHECK(one->revisions(1)[1].recorded == "2020-01-01T00:00:00");
    }
    CHECK(other.contents() == archive.contents());
}

TEST_CASE("bags that a print is not of are not filled, until one is of them") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto part = print({day({stew, soup})});
    part.part = std::vector{stew.bags[0]};
    CHECK(archive.record(part).new_bags == 5);
    const auto state = [&](const std::string& id) { return archive.bag(id)->state; };
    CHECK(state(stew.bags[0]) == State::Frozen);
    CHECK(state(stew.bags[1]) == State::NeverFilled);
    CHECK(archive.last_command() == 0);
    // What only says where it lies, or was taken back, is no filling.
    archive.note(std::vector{stew.bags[1]}, {.place = "cellar"}, "2026-10-17T15:00:00");
    archive.set_state(std::vector{stew.bags[2]}, State::Eaten, "2026-10-17T15:01:00");
    archive.undo("2026-10-17T15:02:00");
    // What the cook said is not taken back by a print.
    archive.set_state(std::vector{soup.bags[0]}, State::Eaten, "2026-10-17T15:03:00");
    archive.set_state(std::vector{soup.bags[0]}, State::NeverFilled, "2026-10-17T15:04:00");
    const auto whole = archive.record(print({day({stew, soup})}, "2026-10-17T16:00:00"));
    CHECK(whole.new_bags == 0);
    for (const auto& id : stew.bags) {
        CHECK(state(id) == State::Frozen);
    }
    CHECK(archive.bag(stew.bags[1])->place == "cellar");
    CHECK(archive.bag(stew.bags[1])->changed == "2026-10-17T16:00:00");
    CHECK(archive.bag(stew.bags[0])->changed == "2026-10-17T14:05:00");
    CHECK(state(soup.bags[0]) == State::NeverFilled);
    CHECK(state(soup.bags[1]) == State::Frozen);
    archive.set_state(soup.bags, State::NeverFilled, "2026-10-17T17:00:00");
    archive.record(print({day({stew, soup})}, "2026-10-17T18:00:00"));
    CHECK(state(soup.bags[1]) == State::NeverFilled);
    CHECK(archive.check().empty());
}

TEST_CASE("what a new revision changed is told bag by bag") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto slip = package("Squahs and red lentil stew", 3);
    archive.record(print({day({slip, soup})}));
    const auto shorter = package(stew.dish, 2);
    const auto recorded = archive.record(print({edited(day({shorter, package(soup.dish, 4)}))}));
    CHECK(recorded.renamed == Pairs{{slip.bags[0], stew.bags[0]}, {slip.bags[1], stew.bags[1]}});
    CHECK(recorded.dropped == std::vector{slip.bags[2]});
    CHECK(recorded.new_bags == 2);
    CHECK(recorded.revisions == 1);
    CHECK(recorded.new_days == 0);
    CHECK(archive.bag(stew.bags[0])->of == 2);
    CHECK(archive.bag(slip.bags[2])->of == 3);
    CHECK(archive.bag(package(soup.dish, 4).bags[3])->number == 4);
    // Where nothing is left of the day, the bags are named in the order of their dishes.
    const auto gone = archive.record(print({edited(day({package("Plum compote", 1)}))}));
    CHECK(gone.dropped.size() == 6);
    CHECK(gone.dropped.front() == stew.bags[0]);
    CHECK(gone.dropped.back() == package(soup.dish, 4).bags[3]);
}

TEST_CASE("a name was mended only where the old one is gone and the new one at its place") {
    const auto slip = package("Squahs and red lentil stew", 3);
    const auto renamed = [&](const std::vector<PackageRecord>& now) {
        const Scratch scratch;
        auto archive = opened(scratch.path);
        archive.record(print({day({slip, soup})}));
        const auto recorded = archive.record(print({edited(day(now))}));
        CHECK(recorded.new_bags == (recorded.renamed.empty() ? 3 : 0));
        CHECK(archive.check().empty());
        return recorded.renamed.size();
    };
    CHECK(renamed({stew, soup}) == 3);
    CHECK(renamed({stew}) == 3);
    CHECK(renamed({stew, soup, slip}) == 0); // both are there
    CHECK(renamed({stew, slip}) == 0);
    CHECK(renamed({soup, stew}) == 0);
    auto other_day = stew;
    other_day.made = date(2026, 10, 18);
    other_day = with_ids(day({other_day}), {kitchen::Batch{}}).packages[0];
    CHECK(renamed({other_day, soup}) == 0);
}

TEST_CASE(
    "no label of a bag sticks on another of the same print: its food, day or size is another") {
    auto other = soup;
    SUBCASE("another dish") {}
    SUBCASE("the same dish of another day") {
        other = stew;
        other.made = date(2026, 10, 16);
    }
    SUBCASE("the same dish in another size") {
        other = stew;
        other.batch.size = 2;
    }
    const auto printed = with_ids(day({stew, other}), {stew.batch, other.batch});
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({printed}));
    const auto before = archive.contents();
    auto wrong = edited(printed);
    wrong.packages[0].bags[2] = printed.packages[1].bags[0];
    try {
        archive.record(print({wrong}));
        FAIL("recorded");
    } catch (const ArchiveFailure& failure) {
        CHECK(failure.fault().kind == ArchiveFault::Kind::Clash);
        CHECK(failure.fault().message == printed.packages[1].bags[0] + " is the id of a bag of \"" +
                                             other.dish + "\" made " + kitchen::to_iso(other.made) +
                                             " already");
    }
    CHECK(archive.contents() == before);
}

TEST_CASE("a name that was mended and written as before again keeps its bags, by all their ids") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto slip = package("Squahs and red lentil stew", 3);
    archive.record(print({day({slip, soup})}));
    archive.record(print({edited(day({stew, soup}))}));
    auto back = edited(day({slip, soup}), "# as before\n");
    back = with_ids(back, archive.settle(back, {}).batches);
    CHECK(archive.record(print({back})).new_bags == 0);
    CHECK(archive.bags(Which::All).size() == 5);
    for (std::size_t bag = 0; bag < 3; ++bag) {
        const auto id = back.packages[0].bags[bag];
        for (const auto& known : {id, slip.bags[bag], stew.bags[bag]}) {
            REQUIRE(archive.bag(known).has_value());
            CHECK(archive.bag(known)->id == id);
            CHECK(archive.bag(known)->dish == slip.dish);
            CHECK(archive.bag(known)->number == static_cast<int>(bag) + 1);
        }
    }
    CHECK(archive.check().empty());
}

TEST_CASE("a label is wrong where it says another food, or a later date that the cook set") {
    auto before = stew;
    const auto after = [&before](const std::function<void(PackageRecord&)>& change) {
        auto now = before;
        change(now);
        return is_relabelled(before, now);
    };
    CHECK_FALSE(after([](PackageRecord&) {}));
    CHECK(after([](PackageRecord& now) { now.food->allergens.clear(); }));
    CHECK(after([](PackageRecord& now) { now.food->classes = {"cooked meat"}; }));
    CHECK(after([](PackageRecord& now) { now.food->classes.clear(); }));
    CHECK_FALSE(after([](PackageRecord& now) { now.food.reset(); })); // not known
    CHECK(after([](PackageRecord& now) { now.keep_until = date(2026, 12, 16); }));
    CHECK_FALSE(after([](PackageRecord& now) { now.keep_until = date(2026, 12, 18); }));
    CHECK_FALSE(after([](PackageRecord& now) {
        now.keep_until = date(2026, 12, 16);
        now.basis = kitchen::DateBasis::StorageTable;
    }));
    before.food->classes.clear(); // a later program knows more words
    CHECK_FALSE(after([](PackageRecord& now) { now.food->classes = {"soup or stew"}; }));
    CHECK(after([](PackageRecord& now) { now.food->allergens = {"milk"}; }));
    before.food.reset();
    CHECK_FALSE(after([](PackageRecord& now) { now.food = stew.food; }));
}

TEST_CASE("only what is new of a bag is noted, and counted") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    const std::vector<std::string> two = {stew.bags[0], stew.bags[1]};
    const auto events = [&] { return archive.history(stew.bags[0]).size(); };
    CHECK(archive.note(two, {State::Frozen}, "2026-10-18T10:00:00") == 0);
    CHECK(archive.note(two, {.place = ""}, "2026-10-18T10:00:00") == 0);
    CHECK(archive.note(two, {}, "2026-10-18T10:00:00") == 0);
    CHECK(events() == 1);
    CHECK(archive.note(two, {State::Frozen, "cellar"}, "2026-10-18T10:01:00") == 2);
    CHECK(archive.note(two, {State::Out, "cellar"}, "2026-10-18T10:02:00") == 2);
    CHECK(archive.note(two, {State::Out, "cellar"}, "2026-10-18T10:03:00") == 0);
    CHECK(events() == 3);
    CHECK(archive.note(std::vector<std::string>{"K7Q-2M4-9XC"}, {State::Out}, "2026-10-18T10:04") ==
          0);
    CHECK(archive.bag(stew.bags[2])->state == State::Frozen);
    const auto past = archive.history(stew.bags[0]);
    CHECK(past[1].event.ordered < past[2].event.ordered);
    CHECK(past[1].event.seq + 1 == past[2].event.seq); // one for each command
    CHECK(past[2].event.clock == 1'792'317'720);       // date -u -d 2026-10-18T10:02 +%s
}

TEST_CASE("the command that is taken back is the one that was named, or none is") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    const Station desk{"desk"};
    CHECK(archive.last_command(desk) == 0);
    archive.set_state(std::vector{stew.bags[0]}, State::Out, "2026-10-18T10:00:00", desk);
    const auto first = archive.last_command(desk);
    archive.set_state(std::vector{stew.bags[1]}, State::Out, "2026-10-18T11:00:00", desk);
    const auto second = archive.last_command(desk);
    CHECK(first > 0);
    CHECK(second > first);
    CHECK(archive.last_command({"stove"}) == 0);
    CHECK(archive.undo("2026-10-18T12:00:00", desk, first).empty());
    CHECK(archive.bag(stew.bags[1])->state == State::Out);
    const auto undone = archive.undo("2026-10-18T12:00:00", desk, second);
    REQUIRE(undone.size() == 1);
    CHECK(undone[0].undone.at == "2026-10-18T11:00:00");
    CHECK(undone[0].undone.seq == second);
    CHECK(archive.last_command(desk) == first);
    CHECK(archive.undo("2026-10-18T12:01:00", desk, first).size() == 1);
    CHECK(archive.last_command(desk) == 0);
    CHECK(archive.bags(Which::InFreezer).size() == 3);
}

TEST_CASE("what a bag takes over from another that it is: what only that one's notes say") {
    const auto before = package("Apple turnovers", 4);
    const auto now = package("Orchard turnovers", 4);
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({before})}));
    archive.record(print({day({now}, "/orchard/renamed.toml")}));
    const auto eaten = [&](const std::string& id) {
        archive.set_state(std::vector{id}, State::Eaten, "2026-10-18T10:00:00");
    };
    const auto moved = [&](const std::string& id, const char* place) {
        archive.note(std::vector{id}, {.place = place}, "2026-10-18T11:00:00");
    };
    eaten(before.bags[0]);
    moved(before.bags[1], "cellar");
    eaten(before.bags[2]);
    archive.set_state(std::vector{now.bags[2]}, State::Out, "2026-10-18T10:00:00");
    moved(before.bags[3], "cellar");
    moved(now.bags[3], "attic");
    archive.join(Pairs{{before.bags[0], now.bags[0]},
                       {before.bags[1], now.bags[1]},
                       {before.bags[2], now.bags[2]},
                       {before.bags[3], now.bags[3]},
                       {now.bags[0], now.bags[0]},
                       {"K7Q-2M4-9XC", now.bags[0]},
                       {now.bags[0], "K7Q-2M4-9XC"}},
                 "2026-10-19T10:00:00");
    CHECK(archive.bags(Which::All).size() == 4);
    CHECK(archive.bag(now.bags[0])->state == State::Eaten);
    CHECK(archive.bag(now.bags[0])->place.empty());
    CHECK(archive.bag(now.bags[1])->state == State::Frozen);
    CHECK(archive.bag(now.bags[1])->place == "cellar");
    CHECK(archive.bag(now.bags[2])->state == State::Out);
    CHECK(archive.bag(now.bags[3])->place == "attic");
    CHECK(archive.history(now.bags[3]).size() == 5);
    CHECK(archive.history("K7Q-2M4-9XC").empty());
}

TEST_CASE("a bag that was renamed twice is known by all three ids, and has the past of all") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const std::vector<PackageRecord> names = {package("Apple turnovers", 1),
                                              package("Orchard turnovers", 1),
                                              package("Windfall turnovers", 1)};
    for (const auto& name : names) {
        archive.record(print({day({name}, "/orchard/" + name.dish)}));
    }
    const auto id = [&names](std::size_t name) { return names[name].bags[0]; };
    archive.join(Pairs{{id(0), id(1)}}, "2026-10-18T10:00:00");
    archive.join(Pairs{{id(1), id(2)}}, "2026-10-18T11:00:00");
    archive.set_state(std::vector{id(0)}, State::Out, "2026-10-18T12:00:00");
    CHECK(archive.bags(Which::All).size() == 1);
    const auto past = archive.history(id(1));
    REQUIRE(past.size() == 6);
    CHECK(past.back().event.state == State::Out);
    CHECK(past.back().id == id(2));
    for (std::size_t name = 0; name < 3; ++name) {
        REQUIRE(archive.bag(id(name)).has_value());
        CHECK(archive.bag(id(name))->id == id(2));
        CHECK(archive.bag(id(name))->state == State::Out);
        CHECK(std::ranges::count(past, id(name), &PastEvent::id) == 2);
    }
}

TEST_CASE("a print that two archives have is from its first time to its last in both") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    here.record(print({day({stew})}, "2026-10-18T09:00:00"));
    there.merge(here.contents());
    const auto again = [](Archive& archive, const char* at, const char* key) {
        auto record = print({day({stew})}, at);
        record.key = key;
        archive.record(record);
    };
    again(here, "2026-10-20T09:00:00", "one");
    again(there, "2026-10-19T09:00:00", "two");
    auto earlier = there.contents();
    earlier.prints[0].first_at = "2026-10-17T09:00:00";
    const auto merged = here.merge(earlier);
    CHECK(merged.prints == 0);
    there.merge(here.contents());
    for (auto* one : {&here, &there}) {
        const auto prints = one->prints_of(one->bag(stew.bags[0])->day);
        REQUIRE(prints.size() == 1);
        CHECK(prints[0].first_at == "2026-10-17T09:00:00");
        CHECK(prints[0].last_at == "2026-10-20T09:00:00");
        CHECK(prints[0].times == 3);
    }
    CHECK(here.contents() == there.contents());
}

TEST_CASE("of one text that two archives printed in one second nothing is taken for the same") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    here.record(print({day({stew})}));
    const auto before = here.contents();
    auto other = print({day({stew})});
    other.setup.stock = "a4-2x4-99x68mm";
    SUBCASE("the same packages") {}
    SUBCASE("another program made other packages of it") {
        other.days[0].packages[0].servings = 4;
    }
    there.record(other);
    const auto merged = here.merge(there.contents());
    CHECK(merged.clashes == stew.bags);
    CHECK(merged.days + merged.bags + merged.prints == 0);
    CHECK(here.contents() == before);
}

TEST_CASE(
    "what the first schema did not keep of a text is no difference when it is printed again") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto bare = stew; // as an archive of that schema has it
    bare.food.reset();
    bare.thaw.reset();
    archive.record(print({day({bare})}));
    const auto again = archive.record(print({day({stew})}, "2026-10-18T09:00:00"));
    CHECK(again.revisions + again.new_days + again.new_bags == 0);
    CHECK_FALSE(again.print_is_new);
    auto fewer = stew;
    fewer.servings = 4; // what it kept is one
    CHECK(archive.record(print({day({fewer})}, "2026-10-19T09:00:00")).revisions == 1);
    auto sooner = fewer;
    sooner.thaw = ThawRecord{kitchen::ThawMethod::ColdWater, std::chrono::hours{2}};
    CHECK(archive.record(print({day({sooner})}, "2026-10-20T09:00:00")).revisions == 1);
    CHECK(archive.bag(stew.bags[0])->thaw == sooner.thaw);
}

TEST_CASE("bags that were left out are let in where the cook says that the kitchen is one") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    here.record(print({day({stew})}));
    auto longer = stew;
    longer.keep_until = date(2027, 1, 1);
    there.record(print({edited(day({longer, soup}))}, "2026-10-18T09:00:00"));
    CHECK(here.merge(there.contents()).clashes == stew.bags);
    CHECK(here.bags(Which::All).size() == 5);
    CHECK(here.bag(stew.bags[0])->keep_until == stew.keep_until);
    const auto merged = here.merge(there.contents(), Kitchens::AreOne);
    CHECK(merged.clashes.empty());
    CHECK(merged.bags + merged.days == 0);
    CHECK(here.bags(Which::All).size() == 5);
    for (const auto& id : stew.bags) {
        CHECK(here.bag(id)->keep_until == longer.keep_until); // as it was described last
        CHECK(here.bag(id)->day == here.bag(soup.bags[0])->day);
    }
    CHECK(here.check().empty());
}

TEST_CASE("in one kitchen bags of one id are one where they say the same, else they clash") {
    const std::pair<const char*, std::function<void(PackageRecord&)>> others[] = {
        {"servings", [](PackageRecord& one) { one.servings = 5; }},
        {"weight", [](PackageRecord& one) { one.weight = kitchen::Mass{800}; }},
        {"allergens", [](PackageRecord& one) { one.food->allergens = {"milk"}; }},
        {"classes", [](PackageRecord& one) { one.food->classes = {"cooked meat"}; }},
        {"nothing of what it is made of", [](PackageRecord& one) { one.food.reset(); }},
    };
    const auto merged = [](const PackageRecord& there) {
        const Scratch scratch;
        auto archive = opened(scratch.path);
        auto other = opened(scratch.folder / "other.db");
        archive.record(print({day({stew})}));
        other.record(print({edited(day({there}, "/barn/saturday.toml"))}));
        return archive.merge(other.contents(), Kitchens::AreOne);
    };
    CHECK(merged(stew).clashes.empty());
    auto moved = stew;
    moved.place = "cellar";
    moved.keep_until = date(2027, 1, 1);
    CHECK(merged(moved).clashes.empty());
    for (const auto& [what, change] : others) {
        CAPTURE(what);
        auto there = stew;
        change(there);
        const auto result = merged(there);
        CHECK(result.clashes == stew.bags);
        CHECK(result.days == 0);
        CHECK(result.prints == 0);
    }
}

} // namespace record_test

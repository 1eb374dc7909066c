// What makes two descriptions the same bags: DEVELOPERS.md, "The same bags".

#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace thawslip;
using namespace thawslip::test_support;
using Kind = WhichBatch::Kind;

namespace {

/// Settles, then records, as a print does.
DayRecord printed(Archive& archive, const DayRecord& day, const WhichBatch& which = {},
                  const std::string& at = "2026-10-17T14:05:00") {
    const auto settled = archive.settle(day, which);
    REQUIRE(settled.doubts.empty());
    const auto with = with_ids(day, settled.batches);
    auto record = print({with}, at);
    record.which = which;
    archive.record(record);
    return with;
}

DayRecord edited(DayRecord day, const std::string& more = "# edited\n") {
    day.description += more;
    return day;
}

/// Two kitchens, once by their names and once by their numbers.
void tell_apart(DayRecord& orchard, DayRecord& barn) {
    SUBCASE("two names") {
        barn.kitchen = barn.packages[0].batch.kitchen = "Barn";
        orchard.packages[0].batch.kitchen = orchard.kitchen;
    }
    SUBCASE("two numbers") {
        barn.packages[0].batch.kitchen_number = 7;
        orchard.packages[0].batch.kitchen_number = 12'345;
    }
}

const PackageRecord chili = package("Chili", 3);

PackageRecord milder(const PackageRecord& package) {
    auto other = package;
    other.servings = 4;
    other.food->allergens = {"milk"};
    return other;
}

} // namespace

TEST_CASE("of a day of many dishes each is told apart, whichever of them are there already") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    std::vector<PackageRecord> dishes; // more than one question asks about
    for (int i = 0; i < 30; ++i) {
        dishes.push_back(package(fmt::format("Plum pot {}", i), 2));
    }
    auto saturday = day(dishes);
    printed(archive, saturday);
    saturday.packages.push_back(chili);
    const auto again = printed(archive, edited(saturday)); // the same file: the same bags
    CHECK(archive.bags(Which::InFreezer).size() == 63);
    CHECK(
        std::ranges::all_of(again.packages, [](const auto& one) { return one.batch.number == 1; }));
    const auto other =
        archive.settle(day({dishes[2], package("Quince", 1), dishes[28]}, "/b.toml"), {});
    REQUIRE(other.doubts.size() == 2); // another file with two of them
    CHECK(other.doubts[0].package == 0);
    CHECK(other.doubts[1].package == 2);
    CHECK(other.doubts[1].known.front().bag == dishes[28].bags.front());
    const auto new_ones = archive.settle(day(dishes, "/b.toml"), {Kind::New, {}}).batches;
    CHECK(std::ranges::all_of(new_ones, [](const auto& batch) { return batch.number > 1; }));
}

TEST_CASE("a second file with a dish of that name and day is asked about, and changes nothing") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    printed(archive, day({chili}));
    const auto before = archive.contents();
    const auto second = day({milder(chili)}, "/orchard/sunday.toml");
    const auto settled = archive.settle(edited(second), {});
    REQUIRE(settled.doubts.size() == 1);
    REQUIRE(settled.doubts[0].known.size() == 1);
    const auto& known = settled.doubts[0].known[0];
    CHECK(known.bag == chili.bags[0]);
    CHECK(known.bags == 3);
    CHECK(known.servings == 6);
    CHECK(known.file == "/orchard/saturday.toml");
    // Recorded all the same, it would swallow the first batch and have right labels taken off.
    CHECK_THROWS_AS(archive.record(print({edited(second)})), ArchiveFailure);
    CHECK(archive.contents() == before);
}

TEST_CASE("another batch has ids of its own, then and whenever it is printed again") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    printed(archive, day({chili}));
    const auto sunday = edited(day({milder(chili)}, "/orchard/sunday.toml"));
    const auto second = printed(archive, sunday, {Kind::New});
    for (const auto& id : second.packages[0].bags) {
        CHECK(std::ranges::find(chili.bags, id) == chili.bags.end());
        CHECK(archive.bag(id)->servings == 4);
    }
    CHECK(archive.bag(chili.bags[0])->servings == 6);
    CHECK(archive.bags(Which::All).size() == 6);
    CHECK(archive.settle(sunday, {}).batches == std::vector{second.packages[0].batch});
    CHECK(archive.settle(edited(sunday), {}).batches == std::vector{second.packages[0].batch});
    CHECK(archive.settle(day({chili}), {}).batches == std::vector{kitchen::Batch{}});
    // A third, too.
    const auto third = printed(archive, edited(sunday, "# third\n"), {Kind::New});
    CHECK(third.packages[0].batch != second.packages[0].batch);
    CHECK(archive.bags(Which::All).size() == 9);
}

TEST_CASE("the cook says that another file describes the bags of a label") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    printed(archive, day({chili}));
    const WhichBatch same{Kind::OfBag, {chili.bags[1]}};
    const auto moved = edited(day({milder(chili)}, "/orchard/moved.toml"));
    const auto again = printed(archive, moved, same);
    CHECK(again.packages[0].bags == chili.bags);
    CHECK(archive.bags(Which::All).size() == 3);
    CHECK(archive.bag(chili.bags[2])->servings == 4);
    CHECK(archive.revisions(1).size() == 2);
    CHECK(archive.settle(edited(moved), {}).doubts.empty()); // its file is known by now
    CHECK(archive.settle(day({package("Plum soup", 1)}), same).fits.empty());
}

TEST_CASE("of several dishes that another file describes, a bag of each is named") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto soup = package("Leek soup", 2);
    const auto first = printed(archive, day({chili, soup}));
    const auto moved = edited(day({milder(chili), soup}, "/orchard/moved.toml"));
    CHECK(archive.settle(moved, {}).doubts.size() == 2);
    const auto& leek = first.packages[1].bags[1];
    const auto half = archive.settle(moved, {Kind::OfBag, {chili.bags[0]}});
    REQUIRE(half.doubts.size() == 1);
    CHECK(half.doubts[0].package == 1);
    const WhichBatch both{Kind::OfBag, {chili.bags[0], chili.bags[1], leek}};
    const auto settled = archive.settle(moved, both);
    CHECK(settled.doubts.empty());
    CHECK(settled.fits == std::set{chili.bags[0], chili.bags[1], leek});
    CHECK(settled.batches == std::vector{first.packages[0].batch, first.packages[1].batch});
    // What is not named may be said to be new, and what is named stays what it is.
    const auto other_soup = archive.settle(moved, {Kind::New, {chili.bags[0]}});
    CHECK(other_soup.doubts.empty());
    CHECK(other_soup.batches[0] == first.packages[0].batch);
    CHECK(other_soup.batches[1] != first.packages[1].batch);
    CHECK(printed(archive, moved, both).packages[1].bags == first.packages[1].bags);
    CHECK(archive.bags(Which::All).size() == 5);
}

TEST_CASE("an answer fits where the bag that was named is one of the text's own, and no other's") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto soup = package("Leek soup", 2);
    const auto first = printed(archive, day({chili}));
    const auto other = printed(archive, day({soup}, "/orchard/soup.toml"));
    const auto fits = [&](const DayRecord& day, const std::string& bag) {
        const auto settled = archive.settle(day, {Kind::OfBag, {bag}});
        CHECK(settled.doubts.empty());
        return settled.fits.contains(bag);
    };
    CHECK(fits(day({chili}), first.packages[0].bags[1]));
    CHECK(fits(edited(day({chili})), first.packages[0].bags[1]));
    CHECK_FALSE(fits(day({chili}), other.packages[0].bags[0]));
    CHECK_FALSE(fits(edited(day({chili})), other.packages[0].bags[0]));
    CHECK(archive.settle(day({chili}), {}).fits.empty()); // nobody was asked
}

TEST_CASE("the same text is the same description, wherever its file is") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    printed(archive, day({chili}));
    const auto moved = printed(archive, day({chili}, "/orchard/elsewhere.toml"));
    CHECK(moved.packages[0].bags == chili.bags);
    CHECK(archive.contents().days.size() == 1);
    // Two batches of one text: only the cook can know which is meant.
    printed(archive, day({chili}, "/orchard/elsewhere.toml"), {Kind::New});
    CHECK(archive.bags(Which::All).size() == 6);
    CHECK(archive.settle(day({chili}, "/orchard/a third place.toml"), {}).doubts.size() == 1);
    CHECK(archive.settle(day({chili}), {}).batches == std::vector{kitchen::Batch{}});
}

TEST_CASE("the same text is the same bags, also where a later program makes more of it") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto plain = chili;
    plain.food->classes.clear();
    printed(archive, day({plain}, ""));
    auto later = chili;
    later.keep_until = date(2027, 3, 1);
    auto again = day({later}, "");
    CHECK(archive.settle(again, {}).doubts.empty());
    const auto recorded = archive.record(print({again}, "2026-10-18T09:00:00"));
    CHECK(recorded.revisions == 1);
    CHECK(recorded.new_bags == 0);
    CHECK(recorded.relabelled.empty()); // it had no kind that could have been wrong
    CHECK(recorded.dropped.empty());
    CHECK(archive.bag(chili.bags[0])->keep_until == date(2027, 3, 1));
}

TEST_CASE("a dish added to a known file that another file has is asked about, the rest is known") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto soup = package("Leek soup", 2);
    printed(archive, day({chili}));
    printed(archive, day({soup}, "/orchard/sunday.toml"));
    const auto both = day({soup, milder(chili)}, "/orchard/sunday.toml");
    const auto settled = archive.settle(both, {});
    REQUIRE(settled.doubts.size() == 1);
    CHECK(settled.doubts[0].package == 1);
    const auto with = printed(archive, both, {Kind::New});
    CHECK(with.packages[0].bags == soup.bags);
    CHECK(with.packages[1].bags != chili.bags);
    CHECK(archive.bags(Which::All).size() == 8);
}

TEST_CASE("kitchens of two names or numbers are never asked about and never cross") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    auto barn = day({milder(chili)});
    auto orchard = day({chili});
    barn.description += "# barn\n";
    tell_apart(orchard, barn);
    const auto ours = printed(here, orchard);
    const auto theirs = printed(there, barn);
    there.set_state(theirs.packages[0].bags, State::Eaten, "2026-11-01T18:00:00");
    const auto merged = here.merge(there.contents());
    CHECK(merged.clashes.empty());
    CHECK(merged.bags == 3);
    for (std::size_t i = 0; i < 3; ++i) {
        const auto our = here.bag(ours.packages[0].bags[i]);
        const auto their = here.bag(theirs.packages[0].bags[i]);
        CHECK(our->state == State::Frozen);
        CHECK(our->servings == 6);
        CHECK(their->state == State::Eaten);
        CHECK(their->servings == 4);
    }
    // Printed again, each finds its own.
    CHECK(printed(here, orchard).packages[0].bags == ours.packages[0].bags);
    CHECK(printed(here, edited(orchard)).packages[0].bags == ours.packages[0].bags);
}

TEST_CASE("the same text in two kitchens that share an archive is of two batches") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto orchard = day({chili});
    auto barn = orchard;
    tell_apart(orchard, barn);
    const auto first = printed(archive, orchard);
    const auto second = printed(archive, barn);
    CHECK(second.packages[0].batch.kitchen == barn.packages[0].batch.kitchen);
    CHECK(second.packages[0].batch.kitchen_number == barn.packages[0].batch.kitchen_number);
    CHECK(second.packages[0].bags != first.packages[0].bags);
    CHECK(archive.bags(Which::InFreezer).size() == 6);
    CHECK(printed(archive, barn).packages[0].bags == second.packages[0].bags);
    CHECK(printed(archive, orchard).packages[0].bags == first.packages[0].bags);
}

TEST_CASE("two kitchens without name and number: equal ids clash, and are named") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    printed(here, day({chili}));
    SUBCASE("of another food") {
        printed(there, edited(day({milder(chili)})));
    }
    SUBCASE("of a description that is the same to the letter") {
        printed(there, day({chili}));
    }
    there.set_state(chili.bags, State::Eaten, "2026-11-01T18:00:00");
    const auto before = here.contents();
    for (int time = 0; time < 2; ++time) {
        CHECK(here.merge(there.contents()).clashes == chili.bags);
        CHECK(here.contents() == before);
    }
}

TEST_CASE("where the cook says that both archives are of one kitchen, equal bags are one") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    printed(here, day({chili}));
    printed(there, day({chili}), {}, "2026-10-17T15:00:00");
    there.set_state(chili.bags, State::Eaten, "2026-11-01T18:00:00");
    const auto merged = here.merge(there.contents(), Kitchens::AreOne);
    CHECK(merged.clashes.empty());
    CHECK(merged.states == 3);
    CHECK(here.bags(Which::All).size() == 3);
    CHECK(here.bags(Which::InFreezer).empty());
    // From now on it is known.
    CHECK(there.merge(here.contents()).clashes.empty());
    auto other_food = opened(scratch.folder / "other.db");
    printed(other_food, edited(day({milder(chili)})));
    CHECK(here.merge(other_food.contents(), Kitchens::AreOne).clashes == chili.bags);
}

TEST_CASE("an older description never becomes the newest, in whatever order archives are merged") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    printed(here, day({chili}));
    there.merge(here.contents());
    auto late = chili;
    late.servings = 5;
    printed(here, edited(day({milder(chili)})), {}, "2026-10-20T09:00:00");
    auto early = day({late});
    early.description += "# before that\n";
    printed(there, early, {}, "2026-10-19T09:00:00");
    auto third = opened(scratch.folder / "third.db");
    for (auto* archive : {&here, &there, &third}) {
        archive->merge(archive == &there ? here.contents() : there.contents());
        archive->merge(here.contents());
        const auto revisions = archive->revisions(1);
        REQUIRE(revisions.size() == 3);
        CHECK(revisions[1].description == early.description);
        CHECK(revisions[2].description == edited(day({chili})).description);
        CHECK(revisions[2].revision == 3);
        CHECK(archive->bag(chili.bags[0])->servings == 4);
    }
    CHECK(here.contents().days == there.contents().days);
    CHECK(here.contents().bags == there.contents().bags);
    CHECK(here.contents().days == third.contents().days);
    CHECK(here.contents().bags == third.contents().bags);
}

TEST_CASE("a print recorded twice under its key counts once") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto once = print({day({chili})});
    once.key = "0123456789abcdef";
    CHECK_FALSE(archive.record(once).is_known);
    const auto before = archive.contents();
    CHECK(archive.record(once).is_known); // the answer was lost, and it is sent again
    CHECK(archive.contents() == before);
    CHECK(archive.prints_of(archive.bag(chili.bags[0])->day).front().times == 1);
    once.key = "another";
    once.at = "2026-10-18T09:00:00";
    archive.record(once);
    CHECK(archive.prints_of(archive.bag(chili.bags[0])->day).front().times == 2);
    CHECK_FALSE(archive.newest_setup(DayKey{99}));
    once.setup.layout = "wide";
    once.key = "a third";
    archive.record(once);
    CHECK(archive.newest_setup(archive.bag(chili.bags[0])->day)->layout == "wide");
    CHECK(archive.prints_of(archive.bag(chili.bags[0])->day).back().times == 2);
    auto there = opened(scratch.folder / "there.db");
    there.merge(archive.contents());
    there.merge(archive.contents());
    CHECK(there.prints_of(there.bag(chili.bags[0])->day).back().times == 2);
}

TEST_CASE(
    "a print that does not come out is not recorded, and one that clashes does not come out") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto before = archive.contents();
    CHECK_THROWS_AS(archive.record(print({day({chili})}), [] { throw std::runtime_error{"full"}; }),
                    std::runtime_error);
    CHECK(archive.contents() == before);
    // Two programs settle at once; the first records.
    const auto other = edited(day({milder(chili)}, "/orchard/sunday.toml"));
    REQUIRE(archive.settle(other, {}).batches == std::vector{kitchen::Batch{}});
    archive.record(print({day({chili})}));
    bool is_out = false;
    CHECK_THROWS_AS(archive.record(print({other}), [&is_out] { is_out = true; }), ArchiveFailure);
    CHECK_FALSE(is_out);
    CHECK(archive.bags(Which::All).size() == 3);
}

TEST_CASE("the last event holds by true time, where the stations' offsets are known") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    printed(here, day({chili}));
    there.merge(here.contents());
    // This station is 15 minutes fast and notes "out" at true 10:00; the other "eaten" at 10:05.
    Station fast{"fast", std::nullopt, -900};
    Station true_one{"true", std::nullopt, 0};
    here.set_state(chili.bags, State::Out, "2026-11-01T10:15:00", fast);
    there.set_state(chili.bags, State::Eaten, "2026-11-01T10:05:00", true_one);
    const auto of_there = there.contents();
    there.merge(here.contents());
    here.merge(of_there);
    CHECK(here.bag(chili.bags[0])->state == State::Eaten);
    CHECK(here.bag(chili.bags[0])->changed == "2026-11-01T10:05:00");
    CHECK(here.contents() == there.contents());
    REQUIRE(here.contents().bags[0].events.size() == 3);
    CHECK(here.contents().bags[0].events[1].offset == -900);
}

TEST_CASE("what a station knew of when it noted a state came before, whatever its clock says") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    printed(here, day({chili}));
    here.set_state(chili.bags, State::Out, "2036-01-01T00:00:00", {"years ahead"});
    there.merge(here.contents());
    there.set_state(chili.bags, State::Eaten, "2026-11-01T18:00:00", {"right"});
    here.merge(there.contents());
    CHECK(here.bag(chili.bags[0])->state == State::Eaten);
}

TEST_CASE("an id typed without the kitchen's symbols is found") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto numbered = day({chili});
    numbered.packages[0].batch.kitchen_number = 777;
    const auto id = printed(archive, numbered).packages[0].bags[0];
    REQUIRE(id.size() == 15);
    std::string typed = id.substr(4);
    std::erase(typed, '-');
    CHECK(archive.near_ids(typed) == std::vector{id});
}

namespace {

/// Two archives of one machine and name: a pot in both, and in the second another dish too.
struct TwoPots {
    Scratch scratch;
    Archive here = opened(scratch.path);
    Archive there = opened(scratch.folder / "there.db");
    PackageRecord soup = package("Leek soup", 2);
    DayRecord ours = day({chili});
    DayRecord theirs = edited(day({milder(chili), soup}, "/orchard/b.toml"));
    TwoPots() {
        theirs.packages[0].bags.push_back(kitchen::bag_id({"Chili", theirs.made, 4}));
        printed(here, ours);
        printed(there, theirs);
    }
};

} // namespace

TEST_CASE_FIXTURE(TwoPots, "a batch that clashes is left out as a whole, and stays left out") {
    const auto merged = here.merge(there.contents());
    CHECK(merged.clashes == theirs.packages[0].bags); // the fourth as well, whose id is free
    CHECK(here.bags(Which::All).size() == 5);
    const auto key = here.bag(soup.bags[0])->day;
    for (const auto& id : theirs.packages[0].bags) {
        CHECK_FALSE(here.is_of(id, key, 0));
    }
    CHECK(here.is_of(soup.bags[0], key, 1));
    CHECK(here.is_of(chili.bags[0], here.bag(chili.bags[0])->day, 0));
    CHECK_FALSE(here.is_of(soup.bags[0], key, 7));
    // Printed here, that very description is no longer what it was there: the dish is asked about.
    const auto settled = here.settle(theirs, {});
    REQUIRE(settled.doubts.size() == 1);
    CHECK(settled.doubts[0].package == 0);
    CHECK(settled.doubts[0].known[0].servings == 6);
    const auto again = printed(here, theirs, {Kind::New}, "2026-10-18T09:00:00");
    CHECK(again.packages[0].bags != theirs.packages[0].bags);
    CHECK(again.packages[1].bags == soup.bags);
    CHECK(here.bag(chili.bags[0])->servings == 6);
    CHECK(here.settle(theirs, {}).batches ==
          std::vector{again.packages[0].batch, again.packages[1].batch});
}

TEST_CASE("the same dish added on both sides to a description that both have: never crossed") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    const auto soup = package("Leek soup", 2);
    printed(here, day({soup}));
    there.merge(here.contents());
    printed(here, day({soup, chili}), {}, "2026-10-18T09:00:00");
    const auto theirs = edited(day({soup, milder(chili)}, "/orchard/b.toml"));
    printed(there, theirs, {Kind::OfBag, {soup.bags[0]}}, "2026-10-19T09:00:00");
    CHECK(here.merge(there.contents()).clashes == chili.bags);
    CHECK(here.bag(chili.bags[0])->servings == 6);
    for (const auto& again : {theirs, edited(theirs)}) {
        const auto settled = here.settle(again, {});
        REQUIRE(settled.doubts.size() == 1);
        CHECK(settled.doubts[0].package == 1);
    }
    CHECK(here.settle(day({soup, chili}), {}).doubts.empty());
}

TEST_CASE("a kitchen's number alone does not make two pots one") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    auto ours = day({chili});
    ours.packages[0].batch.kitchen_number = 7;
    auto theirs = ours;
    bool same = false;
    auto kitchens = Kitchens::MayDiffer;
    SUBCASE("another description") {
        theirs = edited(theirs);
    }
    SUBCASE("other servings") {
        theirs.packages[0].servings = 2;
    }
    SUBCASE("another weight") {
        theirs.packages[0].weight = kitchen::Mass{500.0};
    }
    SUBCASE("other servings, though the cook says that both are one kitchen's") {
        theirs.packages[0].servings = 2;
        kitchens = Kitchens::AreOne;
    }
    SUBCASE("another description, and the cook says that both are one kitchen's") {
        theirs = edited(theirs);
        kitchens = Kitchens::AreOne;
        same = true;
    }
    SUBCASE("the same description to the letter") {
        same = true;
    }
    const auto ids = printed(here, ours).packages[0].bags;
    printed(there, theirs, {}, "2026-10-17T15:00:00");
    there.set_state(ids, State::Discarded, "2026-11-01T18:00:00");
    const auto merged = here.merge(there.contents(), kitchens);
    CHECK((merged.clashes == ids) == !same);
    CHECK(here.bags(Which::InFreezer).size() == (same ? 0 : 3));
    CHECK(here.bag(ids[0])->servings == 6);
}

TEST_CASE("a third pot of one file says nothing of the second, which is there still") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    for (int pot = 0; pot < 4; ++pot) {
        CAPTURE(pot);
        auto record =
            print({with_ids(day({chili}), archive.settle(day({chili}), {Kind::New}).batches)},
                  fmt::format("2026-10-17T1{}:05:00", pot));
        record.which = {Kind::New};
        CHECK(archive.record(record).dropped.empty());
    }
    CHECK(archive.bags(Which::InFreezer).size() == 12);
}

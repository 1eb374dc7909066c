#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

const PackageRecord stew = package("Squash and red lentil stew", 3);
const PackageRecord soup = package("Chestnut and kale soup", 2, date(2026, 11, 1));

} // namespace

TEST_CASE("the same print again adds nothing") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto first = archive.record(print({day({stew, soup})}));
    CHECK(first.print_is_new);
    CHECK(first.new_days == 1);
    CHECK(first.new_bags == 5);
    const auto again = archive.record(print({day({stew, soup})}, "2026-10-18T09:00:00"));
    CHECK_FALSE(again.print_is_new);
    CHECK(again.new_days + again.revisions + again.new_bags == 0);
    CHECK(archive.contents().prints.size() == 1);
    CHECK(archive.prints_on(date(2026, 10, 17)).size() == 1);
    CHECK(archive.prints_on(date(2026, 10, 18)).size() == 1);
    CHECK(archive.prints_on(date(2026, 10, 19)).empty());
}

TEST_CASE(
    "an edited description is a new revision of the same bags, and the old one stays readable") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew, soup})}));
    auto longer = soup;
    longer.keep_until = date(2027, 1, 1);
    auto edited = day({stew, longer});
    edited.description += "# edited\n";
    const auto recorded = archive.record(print({edited}));
    CHECK(recorded.revisions == 1);
    CHECK(recorded.new_bags == 0);
    CHECK(recorded.dropped.empty());
    CHECK(archive.bag(soup.bags[0])->keep_until == date(2027, 1, 1));
    const auto revisions = archive.revisions(1);
    REQUIRE(revisions.size() == 2);
    CHECK(revisions[0].description == day({stew, soup}).description);
    CHECK(revisions[1].description == edited.description);
}

TEST_CASE("a bag keeps its old id where the name of its dish was mended") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto slip = package("Squahs and red lentil stew", 3);
    SUBCASE("in a description that shares other bags") {
        archive.record(print({day({slip, soup}, "/a.toml")}));
        auto moved = print({day({stew, soup}, "/b.toml")});
        moved.which = {WhichBatch::Kind::OfBag, {soup.bags[0]}};
        archive.record(moved);
    }
    SUBCASE("in the same file") {
        archive.record(print({day({slip})}));
        archive.record(print({day({stew})}));
    }
    const auto bag = archive.bag(slip.bags[1]);
    REQUIRE(bag.has_value());
    CHECK(bag->id == stew.bags[1]);
    CHECK(bag->dish == stew.dish);
    CHECK(archive.bag(stew.bags[1])->number == 2);
    CHECK(std::ranges::count(archive.bags(Which::All), stew.dish, &Bag::dish) == 3);
}

TEST_CASE("a bag whose name is a letter off, or whose food differs, counts as a new bag") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto before = package("Beef pot", 3);
    auto now = package("Beet pot", 3);
    SUBCASE("another word of four letters") {}
    SUBCASE("other allergens") {
        before = package("Squahs and red lentil stew", 3);
        now = package("Squash and red lentil stew", 3);
        now.food->allergens = {"celery", "milk"};
    }
    SUBCASE("another storage class") {
        before = package("Squahs and red lentil stew", 3);
        now = package("Squash and red lentil stew", 3);
        now.food->classes = {"cooked meat"};
    }
    SUBCASE("what it is made of was not kept") {
        before = package("Squahs and red lentil stew", 3);
        before.food.reset();
        now = package("Squash and red lentil stew", 3);
    }
    archive.record(print({day({before, soup})}));
    const auto recorded = archive.record(print({day({now, soup})}));
    CHECK(recorded.renamed.empty());
    CHECK(recorded.new_bags == 3);
    CHECK(recorded.dropped == before.bags);
    CHECK(archive.bag(before.bags[0])->dish == before.dish);
    CHECK(archive.bag(now.bags[0])->dish == now.dish);
}

TEST_CASE("a known bag whose allergens or storage class change is named: its old label is wrong") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew, soup})}));
    auto mended = stew;
    mended.food->allergens = {"celery", "milk"};
    CHECK(archive.record(print({day({mended, soup})})).relabelled == stew.bags);
    CHECK(archive.record(print({day({mended, soup})})).relabelled.empty());
}

TEST_CASE(
    "a known bag that is to be used by a sooner date is named: its old label says a later one") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew, soup})}));
    auto sooner = stew;
    sooner.keep_until = date(2026, 12, 16);
    auto edited = day({sooner, soup});
    edited.description += "# sooner\n";
    CHECK(archive.record(print({edited})).relabelled == stew.bags);
    auto later = stew;
    later.keep_until = date(2027, 2, 1);
    edited = day({later, soup});
    edited.description += "# later\n";
    CHECK(archive.record(print({edited})).relabelled.empty()); // wrong, and on the safe side
    later.basis = sooner.basis = kitchen::DateBasis::StorageTable;
    edited = day({sooner, soup});
    edited.description += "# by a list, so about quality\n";
    CHECK(archive.record(print({edited})).relabelled.empty());
}

TEST_CASE("an id that is on another dish's bag already is refused, and nothing changes") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    const auto before = archive.contents();
    auto clash = soup;
    clash.bags[1] = stew.bags[0]; // as if the hashes were the same
    try {
        archive.record(print({day({clash}, "/barn/sunday.toml")}));
        FAIL("recorded");
    } catch (const ArchiveFailure& failure) {
        CHECK(failure.fault().kind == ArchiveFault::Kind::Clash);
        CHECK(failure.fault().message.find(stew.bags[0]) != std::string::npos);
        CHECK(failure.fault().message.find(stew.dish) != std::string::npos);
    }
    CHECK(archive.contents() == before);
}

TEST_CASE("another dish under the same file name is no revision of the first") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    const auto recorded = archive.record(print({day({soup})}));
    CHECK(recorded.new_days == 1);
    CHECK(recorded.renamed.empty());
    CHECK(recorded.dropped == stew.bags); // said once: they may be, or not
    CHECK(archive.record(print({day({soup})})).dropped.empty());
    CHECK(archive.bag(stew.bags[0])->dish == stew.dish);
}

TEST_CASE("bags that an edited description no longer has stay, and are named") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew, soup})}));
    const auto recorded = archive.record(print({day({package(stew.dish, 2), soup})}));
    CHECK(recorded.dropped == std::vector<std::string>{stew.bags[2]});
    CHECK(archive.bag(stew.bags[2])->state == State::Frozen);
}

TEST_CASE("a bag is told with all that its label says, and a package with all that it had") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto whole = stew;
    whole.dish = "Squash \"Röti\", 50 % 'red' \\ lentils";
    whole.words = "squash \"roti\", 50 % 'red' \\ lentils";
    whole.basis = kitchen::DateBasis::StorageTable;
    whole.servings = 3;
    whole.weight = kitchen::Mass{1'234.5};
    whole.food = FoodRecord{{"celery", "tree nuts (walnut)"}, {"cooked meat", "soup or stew"}};
    whole.thaw = ThawRecord{kitchen::ThawMethod::ColdWater, std::chrono::minutes{95}};
    whole.place = "Gefrierfach über der Tür, Korb 2";
    whole.bags = with_ids(day({whole}), {kitchen::Batch{}}).packages[0].bags;
    auto bare = soup;
    bare.food.reset();
    bare.thaw.reset();
    auto untimed = package("Plum compote", 1);
    untimed.thaw = ThawRecord{kitchen::ThawMethod::FromFrozen, std::nullopt};
    untimed.weight = kitchen::Mass{0.25};
    untimed.food = FoodRecord{};
    archive.record(print({day({whole, bare, untimed})}));
    const auto bag = archive.bag(whole.bags[1]);
    REQUIRE(bag.has_value());
    CHECK(bag->dish == whole.dish);
    CHECK(bag->basis == whole.basis);
    CHECK(bag->servings == 3);
    REQUIRE(bag->weight.has_value());
    CHECK(bag->weight->grams == 1'234.5);
    CHECK(bag->thaw == whole.thaw);
    CHECK(bag->classes == whole.food->classes);
    CHECK(bag->allergens == whole.food->allergens);
    CHECK(bag->place == whole.place);
    CHECK(bag->number == 2);
    CHECK(bag->of == 3);
    const auto without = archive.bag(bare.bags[0]);
    CHECK_FALSE(without->weight.has_value());
    CHECK_FALSE(without->thaw.has_value());
    CHECK_FALSE(without->allergens.has_value());
    CHECK(without->classes.empty());
    const auto compote = archive.bag(untimed.bags[0]);
    CHECK(compote->weight->grams == 0.25);
    CHECK(compote->thaw == untimed.thaw);
    CHECK(compote->allergens == std::vector<std::string>{});
    // The archive gives an origin, and numbers in place of ids.
    const auto same = [](PackageRecord told, PackageRecord kept) {
        told.bags.clear();
        kept.bags.clear();
        told.origin.clear();
        return told == kept;
    };
    const auto told = archive.packages(bag->day);
    REQUIRE(told.size() == 3);
    CHECK(same(told[0], whole));
    CHECK(same(told[1], bare));
    CHECK(same(told[2], untimed));
    CHECK(told[0].bags.size() == 3);
    CHECK(archive.find("rot", Which::All).size() == 3);
    CHECK(archive.check().empty());
}

TEST_CASE("bags are listed soonest date first and found by the beginnings of words") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto lower = soup;
    lower.words = "chestnut and kale soup";
    archive.record(print({day({stew, lower})}));
    const auto all = archive.bags(Which::InFreezer);
    REQUIRE(all.size() == 5);
    CHECK(all[0].dish == soup.dish);
    CHECK(archive.find("kal ches", Which::InFreezer).size() == 2);
    CHECK(archive.find("ale", Which::InFreezer).empty());
    for (const std::string odd : {"", "\"", "*", "NEAR(", "a:b", "-", "kale OR stew"}) {
        CAPTURE(odd);
        CHECK(archive.find(odd, Which::All).empty());
    }
}

TEST_CASE("a state is set for all bags named or for none, and found again") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    CHECK(archive.set_state(stew.bags, State::Out, "2026-11-01T08:00:00") == 3);
    CHECK(archive.set_state(stew.bags, State::Out, "2026-11-01T08:00:01") == 0);
    CHECK(archive.bags(Which::InFreezer).empty());
    CHECK(archive.bag(stew.bags[0])->changed == "2026-11-01T08:00:00");
    // A clock that was set back changes nothing about what was done last.
    archive.set_state(stew.bags, State::Eaten, "2020-01-01T00:00:00");
    CHECK(archive.bag(stew.bags[0])->state == State::Eaten);
}

TEST_CASE("ids one slip away are found") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    std::string nine = stew.bags[0];
    std::erase(nine, '-');
    const std::vector<std::string> expected{stew.bags[0]};
    auto wrong = nine;
    wrong[4] = wrong[4] == '7' ? '8' : '7';
    CHECK(archive.near_ids(wrong) == expected);
    CHECK(archive.near_ids(nine.substr(1)) == expected);
    CHECK(archive.near_ids("0" + nine) == expected);
    CHECK(archive.near_ids("") == std::vector<std::string>{});
}

TEST_CASE(
    "what is exported and read into an empty archive is the same, and merging twice is once") {
    const Scratch scratch;
    auto first = opened(scratch.path);
    first.record(print({day({package("Squahs and red lentil stew", 3), soup})}));
    first.record(print({day({stew, soup})}, "2026-10-18T10:00:00"));
    first.set_state(soup.bags, State::Eaten, "2026-11-01T08:00:00");
    auto second = opened(scratch.folder / "second.db");
    const auto merged = second.merge(first.contents());
    CHECK(merged.days == 2);
    CHECK(merged.bags == 5);
    CHECK(merged.prints == 2);
    CHECK(second.contents() == first.contents());
    const auto again = second.merge(first.contents());
    CHECK(again.days + again.bags + again.prints + again.states == 0);
    CHECK(second.contents() == first.contents());
    CHECK(second.check().empty());
}

TEST_CASE("archives that have met merge: all bags of both, the later state of shared ones") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    here.record(print({day({stew})}));
    there.merge(here.contents());
    there.record(print({day({soup}, "/barn/sunday.toml")}));
    there.set_state(stew.bags, State::Eaten, "2026-12-01T08:00:00");
    const auto merged = here.merge(there.contents());
    CHECK(merged.days == 1);
    CHECK(merged.bags == 2);
    CHECK(merged.states == 3);
    CHECK(here.bags(Which::InFreezer).size() == 2);
    CHECK(here.check().empty());
}

TEST_CASE("merging leaves out a bag whose id is here on another food, and names it") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    here.record(print({day({stew})}));
    auto other = stew;
    SUBCASE("other allergens") {
        other.food->allergens = {"milk"};
    }
    SUBCASE("another storage class") {
        other.food->classes = {"cooked meat"};
    }
    SUBCASE("food that was not kept") {
        other.food.reset();
    }
    SUBCASE("another dish whose hash is the same") {
        other = package("Plum and ginger compote", 3);
        other.bags = stew.bags;
    }
    auto elsewhere = day({other, soup}, "/barn/sunday.toml");
    elsewhere.description += "# barn\n";
    there.record(print({elsewhere}));
    const auto merged = here.merge(there.contents());
    CHECK(merged.clashes == stew.bags);
    CHECK(merged.bags == 2);
    CHECK(here.bag(stew.bags[0])->dish == stew.dish);
    CHECK(here.bags(Which::All).size() == 5);
    CHECK(here.check().empty());
}

TEST_CASE("merging takes the younger revision of a description that both have") {
    const Scratch scratch;
    auto here = opened(scratch.path);
    auto there = opened(scratch.folder / "there.db");
    here.record(print({day({stew})}));
    there.merge(here.contents());
    auto edited = stew;
    edited.keep_until = date(2027, 2, 1);
    edited.food->allergens = {"celery", "milk"};
    auto revision = day({edited});
    revision.description += "# milk was forgotten\n";
    there.record(print({revision}, "2026-10-19T10:00:00"));
    const auto merged = here.merge(there.contents());
    CHECK(merged.clashes.empty());
    CHECK(merged.bags == 0);
    CHECK(here.bag(stew.bags[0])->keep_until == date(2027, 2, 1));
    CHECK(here.contents() == there.contents());
    CHECK(there.merge(here.contents()).days == 0);
}

TEST_CASE("a bag lies where it was described to lie, until it is moved") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto described = stew;
    described.place = "garage, basket 2";
    archive.record(print({day({described, soup})}));
    const std::vector<std::string> first = {stew.bags[0]};
    CHECK(archive.bag(first[0])->place == "garage, basket 2");
    CHECK(archive.bag(soup.bags[0])->place.empty());
    CHECK(archive.note(first, {.place = "kitchen, top drawer"}, "2026-10-18T10:00:00") == 1);
    CHECK(archive.note(first, {.place = "kitchen, top drawer"}, "2026-10-18T10:01:00") == 0);
    CHECK(archive.bag(first[0])->place == "kitchen, top drawer");
    CHECK(archive.bag(first[0])->state == State::Frozen);
    CHECK(archive.bag(stew.bags[1])->place == "garage, basket 2");
    // Printing an edited day again moves nothing back.
    auto edited = described;
    edited.servings = 5;
    archive.record(print({day({edited, soup})}, "2026-10-19T09:00:00"));
    CHECK(archive.bag(first[0])->place == "kitchen, top drawer");
    CHECK(archive.bag(first[0])->servings == 5);
    CHECK(archive.check().empty());
}

TEST_CASE("the last command is taken back, then the one before, and never a print") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew, soup})}));
    CHECK(archive.undo("2026-10-17T15:00:00").empty());
    const std::vector<std::string> two = {stew.bags[0], stew.bags[1]};
    archive.note(two, {.place = "cellar"}, "2026-10-18T10:00:00");
    archive.set_state(two, State::Eaten, "2026-10-19T10:00:00");
    const auto undone = archive.undo("2026-10-19T10:05:00");
    REQUIRE(undone.size() == 2);
    CHECK(undone[0].before.state == State::Eaten);
    CHECK(undone[0].after.state == State::Frozen);
    CHECK(undone[0].after.changed == "2026-10-17T14:05:00"); // as if it had not happened
    CHECK(undone[0].undone.state == State::Eaten);
    CHECK(archive.bag(two[0])->place == "cellar");
    CHECK(archive.undo("2026-10-19T10:06:00").size() == 2);
    CHECK(archive.bag(two[1])->place.empty());
    CHECK(archive.undo("2026-10-19T10:07:00").empty());
    const auto past = archive.history(two[0]);
    REQUIRE(past.size() == 5);
    CHECK_FALSE(past[0].is_undone);
    CHECK(past[1].is_undone);
    CHECK(past[1].event.place == "cellar");
    CHECK(past[2].is_undone);
    CHECK(past[3].event.undoes == past[2].event.seq);
    CHECK(archive.check().empty());
}

TEST_CASE("another station's command is not taken back") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    archive.set_state(std::vector{stew.bags[0]}, State::Out, "2026-10-18T10:00:00", {"desk"});
    CHECK(archive.undo("2026-10-18T11:00:00", {"stove"}).empty());
    CHECK(archive.undo("2026-10-18T11:00:00", {"desk"}).size() == 1);
}

TEST_CASE("bags that are one food under two names are one, by every id") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto before = package("Apple turnovers", 2);
    const auto now = package("Orchard turnovers", 2);
    archive.record(print({day({before})}));
    archive.record(print({day({now}, "/orchard/renamed.toml")}));
    archive.set_state(std::vector{before.bags[1]}, State::Eaten, "2026-10-18T10:00:00");
    const std::vector<std::pair<std::string, std::string>> pairs = {{before.bags[0], now.bags[0]},
                                                                    {before.bags[1], now.bags[1]}};
    archive.join(pairs, "2026-10-19T10:00:00");
    CHECK(archive.bags(Which::All).size() == 2);
    CHECK(archive.bags(Which::InFreezer).size() == 1);
    CHECK(archive.find("apple", Which::All).empty());
    CHECK(archive.bag(before.bags[0])->id == now.bags[0]);
    CHECK(archive.bag(now.bags[1])->state == State::Eaten); // as was known of it by its old id
    // By the old id or the new: one bag.
    archive.set_state(std::vector{before.bags[0]}, State::Out, "2026-10-20T10:00:00");
    CHECK(archive.bag(now.bags[0])->state == State::Out);
    CHECK(archive.history(now.bags[0]).size() == 4);
    CHECK(archive.check().empty());
    archive.undo("2026-10-21T10:00:00");
    CHECK(archive.undo("2026-10-21T10:01:00").size() == 3);
    CHECK(archive.bags(Which::All).size() == 4);
    CHECK(archive.bag(before.bags[1])->state == State::Eaten);
    CHECK(archive.bag(now.bags[1])->state == State::Frozen);
}

TEST_CASE("what was renamed, moved and taken back in one archive is so in the other") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto before = package("Apple turnovers", 2);
    const auto now = package("Orchard turnovers", 2);
    archive.record(print({day({before})}));
    archive.record(print({day({now}, "/orchard/renamed.toml")}));
    auto other = opened(scratch.folder / "other.db");
    other.merge(archive.contents());
    const std::vector<std::pair<std::string, std::string>> there = {{before.bags[0], now.bags[0]},
                                                                    {before.bags[1], now.bags[1]}};
    archive.join(there, "2026-10-19T10:00:00", {"desk"});
    archive.note(std::vector{now.bags[1]}, {.place = "cellar"}, "2026-10-19T11:00:00", {"desk"});
    archive.set_state(std::vector{now.bags[1]}, State::Out, "2026-10-19T12:00:00", {"desk"});
    archive.undo("2026-10-19T13:00:00", {"desk"});
    // The other renamed one of them back: nothing is lost of the list.
    const std::vector<std::pair<std::string, std::string>> back = {{now.bags[0], before.bags[0]}};
    other.join(back, "2026-10-19T10:30:00", {"stove"});
    CHECK(other.merge(archive.contents()).clashes.empty());
    CHECK(archive.merge(other.contents()).clashes.empty());
    CHECK(archive.contents().bags == other.contents().bags);
    for (auto* one : {&archive, &other}) {
        CHECK(one->check().empty());
        CHECK(one->bag(now.bags[1])->place == "cellar");
        CHECK(one->bag(now.bags[1])->state == State::Frozen);
        CHECK(one->bag(before.bags[1])->id == now.bags[1]);
        CHECK(one->bags(Which::InFreezer).size() >= 2);
    }
}

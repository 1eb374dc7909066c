// A dish in bags of several sizes: which bags are the same when it is printed again.

#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>

namespace sizes_test {

using namespace thawslip;
using namespace thawslip::test_support;
using Kind = WhichBatch::Kind;

namespace {

/// A stew in bags that serve so many.
PackageRecord stew(int servings, int bags) {
    auto record = package("Stew", bags);
    record.servings = servings;
    record.batch.size = servings;
    return record;
}

/// The day as it stands once it is settled and recorded; `more` makes its text another.
DayRecord printed(Archive& archive, DayRecord day, const std::string& more = "",
                  const WhichBatch& which = {}) {
    day.description += more;
    const auto settled = archive.settle(day, which);
    REQUIRE(settled.doubts.empty());
    const auto with = with_ids(day, settled.batches);
    auto record = print({with});
    record.which = which;
    archive.record(record);
    return with;
}

} // namespace

TEST_CASE("all sizes of a dish are in the archive, each with its own bags and what they serve") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto first = printed(archive, day({stew(6, 3), stew(2, 4)}));
    CHECK(archive.bags(Which::All).size() == 7);
    CHECK(archive.bag(first.packages[0].bags[1])->servings == 6);
    CHECK(archive.bag(first.packages[1].bags[1])->servings == 2);
    CHECK(archive.bag(first.packages[1].bags[1])->of == 4);
    CHECK(archive.check().empty());
}

TEST_CASE("the same text again has the same ids, whatever the archive has of other sizes") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto sized = day({stew(6, 3), stew(2, 4)});
    const auto first = printed(archive, sized);
    const auto again = printed(archive, sized);
    CHECK(again.packages[0].bags == first.packages[0].bags);
    CHECK(again.packages[1].bags == first.packages[1].bags);
    CHECK(archive.bags(Which::All).size() == 7);
}

TEST_CASE("a size may be added, sizes may change places, and a bag more be filled") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto first = printed(archive, day({stew(6, 3), stew(2, 4)}));
    const auto edited = printed(archive, day({stew(2, 5), stew(8, 1), stew(6, 3)}), "# edited\n");
    CHECK(edited.packages[2].bags == first.packages[0].bags);
    CHECK(std::equal(first.packages[1].bags.begin(), first.packages[1].bags.end(),
                     edited.packages[0].bags.begin()));
    CHECK(archive.bags(Which::All).size() == 9);
    CHECK(archive.bag(first.packages[0].bags[0])->servings == 6);
}

TEST_CASE("where a size serves another number now, old and new ids are known for one bag") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto first = printed(archive, day({stew(6, 3), stew(2, 4)}));
    const auto edited = printed(archive, day({stew(5, 3), stew(2, 4)}), "# edited\n");
    CHECK(archive.bags(Which::All).size() == 7);
    for (std::size_t bag = 0; bag < 3; ++bag) {
        const auto& before = first.packages[0].bags[bag];
        const auto& now = edited.packages[0].bags[bag];
        CHECK(before != now);
        CHECK(archive.bag(before)->id == now);
        CHECK(archive.bag(before)->servings == 5);
    }
}

TEST_CASE("a dish that is parted into sizes keeps those bags that serve as many") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    auto plain = package("Stew", 5); // serves 6
    const auto first = printed(archive, day({plain}));
    const auto parted = printed(archive, day({stew(6, 3), stew(2, 4)}), "# edited\n");
    CHECK(archive.bag(first.packages[0].bags[0])->id == parted.packages[0].bags[0]);
    CHECK(archive.bags(Which::All).size() == 9); // 5 of before, 4 new
    // Not where the first size serves another number: those may be other bags.
    const Scratch other;
    auto second = opened(other.path);
    const auto before = printed(second, day({plain}));
    printed(second, day({stew(2, 4)}), "# edited\n");
    CHECK(second.bag(before.packages[0].bags[0])->servings == 6);
    CHECK(second.bags(Which::All).size() == 9);
}

TEST_CASE("an answer for one size of a dish is one for all of them") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    const auto first = printed(archive, day({stew(6, 3), stew(2, 4)}));
    auto moved = day({stew(6, 3), stew(2, 4)}, "/orchard/moved.toml");
    moved.description += "# moved\n";
    CHECK(archive.settle(moved, {}).doubts.size() == 2);
    const WhichBatch same{Kind::OfBag, {first.packages[1].bags[0]}};
    const auto settled = archive.settle(moved, same);
    CHECK(settled.doubts.empty());
    CHECK(settled.fits == std::set{first.packages[1].bags[0]});
    CHECK(settled.batches == std::vector{first.packages[0].batch, first.packages[1].batch});
}

TEST_CASE("sizes come through an export and a merge") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    printed(archive, day({stew(6, 3), stew(2, 4)}));
    auto other = opened(scratch.folder / "other.db");
    const auto merged = other.merge(archive.contents());
    CHECK(merged.bags == 7);
    CHECK(merged.clashes.empty());
    CHECK(other.contents() == archive.contents());
    CHECK(other.merge(archive.contents()).bags == 0);
}

} // namespace sizes_test

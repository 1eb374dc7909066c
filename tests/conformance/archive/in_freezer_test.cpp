// What the freezer has already, beside what a new day plans: by what was printed and noted.

#include "kitchen.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace thawslip::test_support;

namespace {

std::string day(const std::string& made, const std::string& more = "") {
    return "[day]\nmade = " + made +
           "\nkitchen = \"Mill cottage\"\nfreezer = \"60 l\"\n"
           "[[package]]\ndish = \"Beet and lovage pottage\"\nservings = 4\nbags = 4\n"
           "food = \"soup or stew\"\nweight = \"1.5 kg\"\nthickness = \"30 mm\"\n" +
           more;
}

} // namespace

TEST_CASE(
    "a new day is told how many bags of its dish are in the freezer, and what room is taken") {
    const Kitchen kitchen;
    write_file(kitchen.folder / "first.toml", day("2026-10-10"));
    write_file(kitchen.folder / "second.toml", day("2026-10-17"));
    // Nothing printed: nothing is known, and nothing is said.
    CHECK_FALSE(says(kitchen("check second.toml").out, "in the freezer already"));
    REQUIRE(kitchen("labels first.toml -o first.pdf").status == 0);
    const auto check = kitchen("check second.toml");
    CHECK(says(check.out, "4 bags of this are in the freezer already"));
    CHECK(says(check.out, "by the archive 4 other bags are in it already, about 6.1 l"));
    CHECK(says(check.out, "together 12 l (0.4 cu ft) of its 60 l (2.1 cu ft): there is room"));
    // The day's own bags are not counted twice, printed or not.
    CHECK(says(kitchen("check first.toml").out, "by the archive 0 other bags are in it already"));
    const auto id = kitchen.first_id("pottage");
    REQUIRE(kitchen("freezer eaten " + id).status == 0);
    CHECK(says(kitchen("check second.toml").out, "3 bags of this are in the freezer already"));
    const auto json = kitchen("check second.toml --json");
    CHECK(says(json.out, R"("in_freezer":3)"));
    CHECK(says(json.out, R"("held":{"bags":3)"));
    CHECK(says(json.out, R"("verdict":"fits")"));
}

TEST_CASE("room is promised for what has a weight, also of what the freezer has") {
    const Kitchen kitchen;
    auto unweighed = day("2026-10-10");
    const std::string weight = "weight = \"1.5 kg\"\n";
    unweighed.erase(unweighed.find(weight), weight.size());
    write_file(kitchen.folder / "first.toml", unweighed);
    write_file(kitchen.folder / "second.toml", day("2026-10-17"));
    REQUIRE(kitchen("labels first.toml -o first.pdf").status == 0);
    const auto check = kitchen("check second.toml");
    CHECK(
        says(check.out, "by the archive 4 other bags are in it already; 4 bags without a weight"));
    CHECK(says(check.out, "there is room, as far as weights are known\n"));
}

TEST_CASE("the lists name what the freezer has, and bags of another kitchen lie elsewhere") {
    const Kitchen kitchen;
    write_file(kitchen.folder / "first.toml", day("2026-10-10"));
    auto other = day("2026-10-17", "[[package.ingredient]]\nadd = \"2 kg beetroot\"\n");
    write_file(kitchen.folder / "second.toml", other);
    other.replace(other.find("Mill cottage"), 12, "Ferry house");
    write_file(kitchen.folder / "elsewhere.toml", other);
    REQUIRE(kitchen("labels first.toml -o first.pdf").status == 0);
    REQUIRE(kitchen("lists second.toml --day -o lists.txt").status == 0);
    const auto lists = kitchen.file("lists.txt");
    CHECK(says(lists, "4 bags of this are in the freezer"));
    CHECK(says(lists, "In the freezer already"));
    REQUIRE(kitchen("lists elsewhere.toml --day -o elsewhere.txt").status == 0);
    CHECK_FALSE(says(kitchen.file("elsewhere.txt"), "bags of this are in the freezer"));
}

TEST_CASE("bags that the freezer has no room for are said by every command that prints") {
    const Kitchen kitchen;
    auto text = day("2026-10-17");
    text.replace(text.find("60 l"), 4, "5 l");
    write_file(kitchen.folder / "small.toml", text);
    const std::string words = "the day's bags take 6.1 l (0.2 cu ft), and it holds 5 l";
    CHECK(says(kitchen("check small.toml").out, words));
    CHECK(says(kitchen("labels small.toml -o labels.pdf").err, words));
}

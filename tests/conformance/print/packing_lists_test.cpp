// The lists of a packing day in two days, by station, and for shopping.

#include "pages.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string sample(const std::string& name) {
    return shell_word(std::string{THAWSLIP_SOURCE_DIR} + "/samples/" + name);
}

/// The words of a list, page by page.
std::string list_words(const std::string& arguments) {
    const ScratchFolder folder;
    const auto pdf = folder / "lists.pdf";
    const auto outcome = run_thawslip("lists " + arguments + " -o " + shell_word(pdf));
    INFO(outcome.err);
    REQUIRE(outcome.status == 0);
    return words_in(pdf);
}

} // namespace

TEST_CASE("a packing in two days has the day before on a sheet and in the shopping of its own") {
    for (const char* paper : {"letter", "a4"}) {
        const auto words = list_words(sample("two-days.toml") + " --day --paper " + paper);
        for (const char* each :
             {"The day before", "Fri 16 Oct 2026", "Prepare and chill", "diced venison",
              "Cook all of it today", "Packing day", "Sat 17 Oct 2026", "Cooked Fri 16 Oct 2026",
              "Room in the freezer", "The day before, Fri 16 Oct 2026", "For packing day",
              "For cook day", "lemons"}) {
            CAPTURE(each);
            CHECK(has(words, each));
        }
    }
    CHECK(has(list_words(sample("two-days.toml") + " --day --language es"), "La víspera"));
    CHECK(has(list_words(sample("two-days.toml") + " --day --language de"), "Am Vortag"));
}

TEST_CASE("--by-station gives each station its pages, and --shopping the list alone") {
    const auto stations = list_words(sample("two-days.toml") + " --by-station");
    CHECK(has(stations, "Stove"));
    CHECK(has(stations, "Long table"));
    CHECK(has(stations, "Shopping"));
    CHECK_FALSE(has(stations, "Allergens as declared")); // the door list is none of it
    const auto shopping =
        list_words(sample("two-days.toml") + " " + sample("orchard-day.toml") + " --shopping");
    CHECK(has(shopping, "Shopping"));
    CHECK(has(shopping, "Vegetables and fruit"));
    CHECK(has(shopping, "A1"));
    CHECK(has(shopping, "B1"));
    CHECK_FALSE(has(shopping, "Into the bags"));
    CHECK_FALSE(has(shopping, "water"));
}

TEST_CASE("goods of the cook's own come first, and a mistake among them is told at its place") {
    const ScratchFolder folder;
    write_file(folder / "settings.toml", "goods = \"goods.toml\"\n");
    write_file(folder / "goods.toml", read_file(THAWSLIP_SOURCE_DIR "/samples/goods.toml"));
    const auto with = " --settings " + shell_word(folder / "settings.toml");
    CHECK(has(list_words(sample("two-days.toml") + " --shopping" + with), "Own store"));
    write_file(folder / "goods.toml", "[[kind]]\nname = \"Mill\"\ngods = [\"flour\"]\n");
    const auto faulty =
        run_thawslip("lists " + sample("two-days.toml") + " --shopping -o /dev/null" + with);
    CHECK(faulty.status != 0);
    CHECK(has(faulty.err, "goods.toml:3:1: error: unknown key \"gods\""));
    CHECK(has(faulty.err, "did you mean \"goods\"?"));
    write_file(folder / "settings.toml", "goods = \"no-such.toml\"\n");
    const auto missing =
        run_thawslip("lists " + sample("two-days.toml") + " --shopping -o /dev/null" + with);
    CHECK(missing.status != 0);
    CHECK(has(missing.err, "no-such.toml"));
}

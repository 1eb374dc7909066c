// What a guest may not eat, as the terminal says it: nobody is to take silence for a promise.

#include "kitchen.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// One bag of each dish: a name, and what its table says.
std::string day_of(const std::vector<std::pair<std::string, std::string>>& dishes) {
    std::string text = "[day]\nmade = 2026-10-17\n";
    for (const auto& [dish, more] : dishes) {
        text += "[[package]]\ndish = \"" + dish +
                "\"\nservings = 4\nfood = \"soup or stew\"\nuse_by = 2026-12-17\n" + more;
    }
    return text;
}

/// The answer without ids and what stands between the dish and its contents.
std::string told(const Kitchen& kitchen, const std::string& avoided) {
    return kitchen("freezer list --without " + shell_word(avoided) +
                   R"( | sed -E 's/^[0-9A-Z-]{11}  //; s/  +serves .*//')")
        .out;
}

const std::string at_the_end =
    "\nThat no label names it is no promise that it is not there: ask who cooked, and read the "
    "label\nand what is added on cook day. This is not medical advice; the rules of your local "
    "food\nauthority come first.\n";

} // namespace

TEST_CASE("each bag that names it is told with where, and the others with what they contain") {
    const Kitchen kitchen;
    write_file(kitchen.folder / "guest.toml",
               day_of({{"Bean pot", "contains = [\"butter\"]\n"},
                       {"Leek broth", "contains = [\"celery\"]\nmay_contain = [\"milk\"]\n"},
                       {"Barley stew", "contains = [\"barley\"]\n[[package.finish]]\nadd = \"200 "
                                       "ml cream\"\nwhen = \"at serving\"\n"},
                       {"Quince mash", "[[package.ingredient]]\nadd = \"100 g cheddar\"\n"},
                       {"Hazel soup", "contains = [\"hazelnuts\"]\n"}}));
    REQUIRE(kitchen("labels guest.toml -o labels.pdf").status == 0);
    CHECK(told(kitchen, "milk, gluten") == "Named (milk, gluten), so not for this guest: 4 bags\n"
                                           "Barley stew\n"
                                           "             milk: gets on cook day 200 ml cream; "
                                           "gluten: contains barley\n"
                                           "Bean pot\n"
                                           "             milk: contains butter\n"
                                           "Leek broth\n"
                                           "             milk: may contain milk\n"
                                           "Quince mash\n"
                                           "             milk: its description says 100 g cheddar\n"
                                           "\nNo label names it (milk, gluten): 1 bag\n"
                                           "Hazel soup\n"
                                           "             contains tree nuts (hazelnut)\n" +
                                               at_the_end);
    const auto walnut = told(kitchen, "walnut");
    CHECK(walnut.starts_with("Named (walnut), so not for this guest: 1 bag\nHazel soup\n"
                             "             walnut: names another of that group, ask: hazelnuts\n"
                             "\nNo label names it (walnut): 4 bags\n"));
    CHECK(walnut.ends_with("Quince mash\n             no allergen is named on its label\n" +
                           at_the_end));
}

TEST_CASE("a bag whose description cannot be read is for no guest") {
    const Kitchen kitchen;
    write_file(kitchen.folder / "guest.toml", day_of({{"Bean pot", "contains = [\"celery\"]\n"}}));
    REQUIRE(kitchen("labels guest.toml -o labels.pdf").status == 0);
    kitchen.sql("UPDATE day SET description = '[day'");
    CHECK(told(kitchen, "milk") ==
          "Named (milk), so not for this guest: 0 bags\n"
          "\nNot known, for the description cannot be read, so not for this guest: 1 bag\n"
          "Bean pot\n"
          "             what it contains is not known here: see the label\n"
          "\nNo label names it (milk): 0 bags\n" +
              at_the_end);
}

TEST_CASE("what is no food is refused, and nothing is listed") {
    const Kitchen kitchen;
    for (const std::string avoided : {"", " , "}) {
        CAPTURE(avoided);
        const auto asked = kitchen("freezer list --without " + shell_word(avoided));
        CHECK(asked.status == 2);
        CHECK(asked.out.empty());
    }
}

TEST_CASE("to a guest no dish is proposed that names it, and what is proposed is no promise") {
    const Kitchen kitchen;
    write_file(kitchen.folder / "guest.toml",
               day_of({{"Bean pot", "contains = [\"butter\"]\n"}, {"Leek broth", ""}}));
    REQUIRE(kitchen("labels guest.toml -o labels.pdf").status == 0);
    const auto both = kitchen("freezer next --serves 4").out;
    CHECK(both.find("  Bean pot, bag ") != std::string::npos);
    CHECK(both.find("  Leek broth, bag ") != std::string::npos);
    CHECK_FALSE(both.ends_with(at_the_end.substr(1)));
    const auto guest = kitchen("freezer next --serves 4 --without milk").out;
    CHECK(guest.find("  Bean pot, bag ") == std::string::npos);
    CHECK(guest.find("  Leek broth, bag ") != std::string::npos);
    CHECK(guest.find("not proposed, for what the guest may not eat is named there, or what is in "
                     "it is not known: Bean pot\n") != std::string::npos);
    CHECK(guest.ends_with(at_the_end.substr(1)));
    CHECK(kitchen("freezer next --without \" , \"").status == 2);
}

// Bags by words of their dishes, at the command line: which are meant, what is noted, and back.

#include "kitchen.h"
#include "support/skip.h"
#include "support/terminal.h"

#include <algorithm>
#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

std::string package(const std::string& dish, int bags, const std::string& more = {}) {
    return "[[package]]\ndish = \"" + dish + "\"\nservings = 4\nbags = " + std::to_string(bags) +
           "\nfood = \"soup or stew\"\nuse_by = 2027-01-17\n" + more;
}

struct WordsKitchen : Kitchen {
    WordsKitchen() {
        describe("day.toml",
                 package("Red lentil dahl", 4) + package("Quince, pear and barley pot", 2));
        REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    }
    void describe(const std::string& file, const std::string& packages) const {
        write_file(folder / file,
                   "[day]\nmade = 2026-10-17\nplace = \"garage, basket 2\"\n" + packages);
    }
    long frozen() const {
        const auto ids = (*this)("freezer list --json | grep -c '\"id\"'").out;
        return std::stol(ids);
    }
};

} // namespace

TEST_CASE_FIXTURE(WordsKitchen, "bags are noted by words, and the change is taken back") {
    const auto asked = (*this)("freezer out lentil");
    CHECK(asked.status == 1);
    CHECK(says(asked.err, "\"lentil\" fits 4 bags; which is meant?"));
    CHECK(frozen() == 6);
    CHECK((*this)("freezer out lentil, quince, pear and barley pot --oldest").status == 0);
    CHECK(frozen() == 4);
    const auto eaten = (*this)("freezer eaten lentil");
    CHECK(says(eaten.out, "Red lentil dahl, bag 1 of 4: eaten"));
    const auto undone = (*this)("freezer undo");
    CHECK(says(undone.out, "no longer eaten"));
    CHECK(says(undone.out, "again out"));
    CHECK((*this)("freezer undo").status == 0);
    CHECK(frozen() == 6);
    CHECK((*this)("freezer undo").status == 1);
    CHECK((*this)("freezer never-filled lentil --all").status == 0);
    CHECK(frozen() == 2);
    CHECK(says((*this)("freezer list --all").out, "never filled since 2026-10-17"));
    CHECK(says((*this)("freezer history lentil").out, "never filled"));
    CHECK((*this)("archive check").status == 0);
}

TEST_CASE_FIXTURE(WordsKitchen, "who sits at a terminal is asked which of several bags it is") {
    if (!has_terminals()) {
        return;
    }
    const auto eaten = [this](const std::string& typed) {
        return run_at_terminal(line("freezer eaten lentil"), typed);
    };
    const auto second = eaten("x\n0\n5\n2\n");
    CAPTURE(second.screen);
    CHECK(second.status == 0);
    CHECK(says(second.screen, "\"lentil\" fits 4 bags, the oldest first:\n   1  "));
    CHECK(says(second.screen, "Red lentil dahl, bag 4 of 4, serves 4, made 2026-10-17, use by "
                              "2027-01-17, garage, basket 2"));
    CHECK(says(second.screen, "numbers from 1 to 4 are taken"));
    CHECK(says(second.screen, "Red lentil dahl, bag 2 of 4: eaten"));
    CHECK(frozen() == 5);
    for (const std::string typed : {"\n", ""}) { // no more comes
        const auto none = eaten(typed);
        CAPTURE(none.screen);
        CHECK(says(none.screen, "fits 3 bags"));
        CHECK_FALSE(says(none.screen, ": eaten"));
        CHECK(frozen() == 5);
    }
    const auto two = eaten("1, 3\n");
    CAPTURE(two.screen);
    CHECK(says(two.screen, "bag 1 of 4: eaten"));
    CHECK(says(two.screen, "bag 4 of 4: eaten"));
    CHECK(frozen() == 3);
    REQUIRE((*this)("freezer undo").status == 0);
    CHECK(eaten("all\n").status == 0);
    CHECK(frozen() == 2);
}

TEST_CASE_FIXTURE(WordsKitchen, "labels are printed again by words of several dishes") {
    CHECK((*this)("reprint \"lentil, quince, pear\" -o again.pdf").status == 0);
    CHECK(says((*this)("reprint \"lentil, quince, pear\" -o again.pdf").out, "6 labels"));
    CHECK(says((*this)("reprint lentl -o again.pdf").err, "did you mean \"Red lentil dahl\"?"));
    const auto wrong_day = (*this)("reprint --printed 2026-10-21 -o again.pdf");
    CHECK(wrong_day.status == 1);
    CHECK(says(wrong_day.err, "labels were printed on 2026-10-17"));
    CHECK(says((*this)("read quince").out, "Quince, pear and barley pot"));
    CHECK(says((*this)("plan \"lentil, quince, pear\" --eat \"2026-10-20 18:30\"").out, "Quince"));
}

TEST_CASE_FIXTURE(WordsKitchen, "one mistaken stock of a day does not block its prints") {
    REQUIRE((*this)("labels day.toml -o second.pdf --stock a4-2x4-99x68mm").status == 0);
    const auto again = (*this)("reprint --printed 2026-10-17 -o again.pdf");
    CAPTURE(again.err);
    CHECK(again.status == 0);
    CHECK(says(again.err, "was printed again on a4-2x4-99x68mm: that is made again"));
    CHECK(says(again.out, "6 labels"));
}

TEST_CASE_FIXTURE(WordsKitchen, "swapped letters are a slip: the bags stay the bags they are") {
    describe("day.toml", package("Red lentil dhal", 4) + package("Quince, pear and barley pot", 2));
    const auto printed = (*this)("labels day.toml -o labels.pdf");
    CHECK(says(printed.err, "both ids are known"));
    CHECK(frozen() == 6);
}

TEST_CASE_FIXTURE(WordsKitchen, "a bag whose number the new name has not stays as it is") {
    describe("day.toml", package("Ginger pot", 3) + package("Quince, pear and barley pot", 2));
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    const auto renamed = (*this)("freezer renamed \"lentil dahl\" \"ginger pot\"");
    CAPTURE(renamed.out);
    CHECK(renamed.status == 0);
    CHECK(says(renamed.out, "both ids are known\n"));
    CHECK(says(renamed.out, " stays as it is: no bag of the new name has its number\n"));
    CHECK(frozen() == 6); // three joined, one alone, two of the other dish
}

TEST_CASE_FIXTURE(WordsKitchen, "another name is other bags, until it is said to be the same") {
    describe("day.toml", package("Ginger pot", 4) + package("Quince, pear and barley pot", 2));
    const auto printed = (*this)("labels day.toml -o labels.pdf");
    CHECK(says(printed.err, "thawslip freezer renamed "));
    CHECK(frozen() == 10);
    const auto old_id = first_id("dahl");
    REQUIRE((*this)("freezer renamed \"lentil dahl\" \"ginger pot\"").status == 0);
    CHECK(frozen() == 6);
    CHECK(says((*this)("read " + old_id).out, "Ginger pot"));
    CHECK((*this)("freezer eaten " + old_id).status == 0);
    CHECK(frozen() == 5);
    CHECK((*this)("archive export folder").status == 0);
    CHECK((*this)("archive check").status == 0);
    const auto list = (*this)("freezer list --all").out;
    std::filesystem::remove(archive);
    std::filesystem::remove(archive + "-wal");
    std::filesystem::remove(archive + "-shm");
    CHECK((*this)("archive import folder").status == 0);
    CHECK((*this)("freezer list --all").out == list);
}

TEST_CASE_FIXTURE(WordsKitchen, "bags are moved, and lists know where they lie") {
    CHECK(says((*this)("freezer move lentil --all --to \"cellar, shelf 1\"").out,
               "cellar, shelf 1, was garage, basket 2"));
    CHECK(says((*this)("freezer list --json").out, "\"place\":\"cellar, shelf 1\""));
    CHECK(says((*this)("freezer list --json").out, "\"place\":\"garage, basket 2\""));
    CHECK((*this)("freezer move lentil --to ''").status != 0);
}

TEST_CASE_FIXTURE(WordsKitchen, "a photograph is read with what to do next, and planned by") {
    REQUIRE((*this)("labels day.toml --stock a4-2x2-99x139mm --no-archive -o big.pdf").status == 0);
    if (run("command -v pdftoppm").status != 0) {
        return skip("there is no pdftoppm");
    }
    REQUIRE(run("pdftoppm -r 150 -f 1 -l 1 -x 0 -y 0 -W 640 -H 860 -jpeg -singlefile " +
                shell_word(folder / "big.pdf") + " " + shell_word(folder / "photo"))
                .status == 0);
    const auto read = (*this)("read photo.jpg");
    CAPTURE(read.err);
    REQUIRE(read.status == 0);
    CHECK(says(read.err, "next: thawslip plan "));
    CHECK(says(read.err, "next: thawslip freezer out "));
    const std::string eat = " --eat \"2026-10-20 18:30\"";
    const auto known = (*this)("plan photo.jpg" + eat);
    CAPTURE(known.err);
    CHECK(says(known.out, "Red lentil dahl")); // in the cook's own words
    CHECK_FALSE(says(known.err, "from its code alone"));
    archive = folder / "another.db";
    const auto unknown = (*this)("plan photo.jpg" + eat);
    CHECK(says(unknown.out, "RED LENTIL DAHL"));
    CHECK(says(unknown.err, "is not in this archive: planned from its code alone"));
    CHECK(says((*this)("read photo.jpg").err, "next: thawslip plan photo.jpg"));
    CHECK_FALSE(std::filesystem::exists(archive));
}

TEST_CASE_FIXTURE(WordsKitchen,
                  "a telephone's HEIC, and a picture without a code, say what helps") {
    for (const auto* name : {"photo.heic", "photo"}) { // known by its name, and by how it begins
        write_file(folder / name, std::string{"\0\0\0\x18"
                                              "ftypheic\0\0\0\0mif1heic",
                                              24});
    }
    for (const std::string command :
         {"read photo.heic", "plan photo.heic --eat \"2026-10-20 18:30\"", "read photo"}) {
        CAPTURE(command);
        const auto refused = (*this)(command);
        CHECK(refused.status == 1);
        CHECK(says(refused.err, "send it as JPEG"));
    }
    write_file(folder / "blank.png",
               read_file(THAWSLIP_SOURCE_DIR "/tests/fuzz/corpus/photo/palette.png"));
    CHECK(says((*this)("read blank.png").err, "or type the id that stands"));
}

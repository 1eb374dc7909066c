// Printing a part of a day, and what the archive makes of it.

#include "kitchen.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>
#include <set>
#include <sstream>

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// A packing day of three dishes, five bags, two and three.
std::string day_text(const std::string& more = "") {
    return "[day]\nmade = 2026-10-17\nkitchen = \"Orchard house\"\n"
           "[[package]]\ndish = \"Windfall apple chowder\"\nservings = 4\nbags = 5\n"
           "food = \"soup or stew\"\ncontains = [\"celery\"]\n[package.thaw]\n"
           "method = \"refrigerator\"\n"
           "[[package]]\ndish = \"Cider brisket\"\nservings = 6\nbags = 2\n"
           "food = \"cooked meat\"\n[[package.finish]]\nadd = \"200 ml cider\"\n"
           "when = \"at the start\"\n[package.cook]\nin = \"pot\"\ntime = \"40 min\"\n"
           "until = \"74 °C\"\n"
           "[[package]]\ndish = \"Pickers' barley stew\"\nservings = 4\nbags = 3\n"
           "food = \"soup or stew\"\n" +
           more;
}

struct PartKitchen : Kitchen {
    PartKitchen() { write_file(folder / "saturday.toml", day_text()); }

    /// The ids on what a command prints, in order, each as often as it is there.
    std::vector<std::string> ids_of(const std::string& command) const {
        const auto printed = (*this)(command + " -o part.pdf");
        CAPTURE(printed.err);
        REQUIRE(printed.status == 0);
        return ids_in("part.pdf");
    }
    std::vector<std::string> ids_in(const std::string& name) const {
        const auto text = run("pdftotext -raw " + shell_word(folder / name) +
                              " - | grep -oE '[0-9A-HJKMNP-TV-Z]{3}-[0-9A-HJKMNP-TV-Z]{3}-"
                              "[0-9A-HJKMNP-TV-Z]{3}'");
        std::istringstream lines{text.out};
        std::vector<std::string> ids;
        for (std::string id; lines >> id;) {
            ids.push_back(id);
        }
        return ids;
    }
    std::string words_of(const std::string& command) const {
        const auto printed = (*this)(command + " -o words.pdf");
        CAPTURE(printed.err);
        REQUIRE(printed.status == 0);
        return run("pdftotext -layout " + shell_word(folder / "words.pdf") + " -").out;
    }
};

std::set<std::string> as_set(const std::vector<std::string>& ids) {
    return {ids.begin(), ids.end()};
}

std::vector<std::string> slice(const std::vector<std::string>& ids, std::size_t first,
                               std::size_t count) {
    return {ids.begin() + static_cast<std::ptrdiff_t>(first),
            ids.begin() + static_cast<std::ptrdiff_t>(first + count)};
}

} // namespace

TEST_CASE_FIXTURE(PartKitchen,
                  "a part has the ids and the numbers of the whole, on sheets and rolls") {
    for (const std::string stock : {"letter-2x5-4x2in", "roll-100x150mm"}) {
        CAPTURE(stock);
        const auto labels = "labels saturday.toml --no-archive --stock " + stock;
        const auto all = ids_of(labels);
        REQUIRE(all.size() == 10);
        CHECK(ids_of(labels + " --dish brisk") == slice(all, 5, 2));
        CHECK(ids_of(labels + " --bag 3-5") == slice(all, 2, 3));
        CHECK(ids_of(labels + " --dish \"pick stew\" --bag 2-3") == slice(all, 8, 2));
        CHECK(ids_of(labels + " --bag " + all[6]) == slice(all, 6, 1));
        CHECK(ids_of(labels + " --from " + all[7]) == slice(all, 7, 3));
        CHECK(ids_of(labels + " --from 9") == slice(all, 8, 2));
        CHECK(ids_of(labels + " --bag 2 --copies 3") ==
              std::vector<std::string>{all[1], all[1], all[1]});
        CHECK(says(words_of(labels + " --dish chow --bag 4"), "4 of 5"));
    }
}

TEST_CASE_FIXTURE(PartKitchen, "a label of a part is drawn as it is among all") {
    const std::string labels = "labels saturday.toml --no-archive --stock roll-100x150mm ";
    REQUIRE((*this)(labels + "-o all.txt").status == 0);
    REQUIRE((*this)(labels + "--dish barley -o part.txt").status == 0);
    const auto all = file("all.txt");
    const auto part = file("part.txt");
    // Behind the line that says which sheet it is, the last page is the last page.
    const auto last_page = [](const std::string& text) {
        return text.substr(text.find('\n', text.rfind("sheet")));
    };
    CHECK(last_page(all) == last_page(part));
}

TEST_CASE_FIXTURE(PartKitchen, "cards and lists take the same part") {
    const auto all = ids_of("labels saturday.toml --no-archive");
    CHECK(as_set(ids_of("cards saturday.toml --no-archive --finishing --bag 7")) ==
          as_set(slice(all, 6, 1)));
    const auto cards = words_of("cards saturday.toml --no-archive --dish \"brisk, chow\"");
    CHECK(says(cards, "Cider brisket"));
    CHECK(says(cards, "chowder"));
    CHECK_FALSE(says(cards, "barley"));
    const auto sheet = words_of("lists saturday.toml --day --dish stew");
    CHECK(says(sheet, "barley stew"));
    CHECK_FALSE(says(sheet, "brisket"));
    const auto door = words_of("lists saturday.toml --door --bag 1-2");
    CHECK(says(door, "chowder"));
    CHECK_FALSE(says(door, "stew"));
    CHECK(says((*this)("cards saturday.toml --finishing --no-archive --dish chow -o no.pdf").out,
               "nothing to print"));
}

TEST_CASE_FIXTURE(PartKitchen, "a part that is printed changes nothing of the other bags") {
    const auto all = ids_of("labels saturday.toml --no-archive");
    REQUIRE(ids_of("labels saturday.toml --dish brisk") == slice(all, 5, 2));
    const auto in_freezer = [this] { return (*this)("freezer list").out; };
    CHECK(says(in_freezer(), all[6])); // what was printed is there, and nothing else yet
    CHECK_FALSE(says(in_freezer(), all[7]));
    CHECK_FALSE(says(in_freezer(), all[0]));
    const auto later = (*this)("labels saturday.toml --from 1 -o later.pdf");
    CHECK(ids_in("later.pdf") == all); // the ids of a whole print
    CHECK_FALSE(says(later.err, "never filled"));
    for (const auto& id : all) {
        CHECK(says(in_freezer(), id));
    }
    REQUIRE((*this)("freezer eaten " + all[1]).status == 0);
    REQUIRE((*this)("labels saturday.toml --dish brisk -o other.pdf").status == 0);
    CHECK_FALSE(says(in_freezer(), all[1])); // what the cook says stays
    const auto again = (*this)("labels saturday.toml --bag 8 -o one.pdf");
    CHECK_FALSE(says(again.err, "no longer described"));
    CHECK_FALSE(says(again.err, "was printed before"));
    CHECK(sql("SELECT count(*) FROM bag") == "10\n");
    CHECK(sql("SELECT count(*) FROM day") == "1\n");
    CHECK((*this)("archive check").status == 0);
}

TEST_CASE_FIXTURE(PartKitchen, "a bag that was moved, or noted by mistake, before its first label "
                               "is in the freezer with it") {
    const auto all = ids_of("labels saturday.toml --no-archive");
    REQUIRE(ids_of("labels saturday.toml --dish brisk") == slice(all, 5, 2));
    REQUIRE((*this)("freezer eaten " + all[0]).status == 0);
    REQUIRE((*this)("freezer undo").status == 0);
    REQUIRE((*this)("freezer move " + all[1] + " --to cellar").status == 0);
    REQUIRE((*this)("freezer eaten " + all[2]).status == 0);
    const auto later = (*this)("labels saturday.toml -o later.pdf");
    CHECK_FALSE(says(later.err, "never filled"));
    const auto in_freezer = (*this)("freezer list").out;
    CHECK(says(in_freezer, all[0]));
    CHECK(says(in_freezer, all[1]));
    CHECK_FALSE(says(in_freezer, all[2])); // what the cook says stays
}

TEST_CASE_FIXTURE(PartKitchen, "a day's door list has no bag that is gone, and none not yet filled "
                               "is missing") {
    const auto all = ids_of("labels saturday.toml --no-archive");
    const auto has = [this](const std::string& bags) {
        return says(words_of("lists saturday.toml --door"), "Bags: " + bags + ",");
    };
    CHECK(has("10"));
    REQUIRE(ids_of("labels saturday.toml --dish brisk") == slice(all, 5, 2));
    CHECK(has("10"));
    REQUIRE((*this)("freezer eaten " + all[5]).status == 0);
    CHECK(has("9"));
    REQUIRE((*this)("freezer never-filled " + all[6]).status == 0);
    CHECK(has("8"));
    CHECK_FALSE(says(words_of("lists saturday.toml --door"), "brisket"));
    const auto none = (*this)("lists saturday.toml --door --dish brisk -o none.pdf");
    CHECK(says(none.out, "nothing to print"));
    CHECK_FALSE(fs::exists(folder / "none.pdf"));
}

TEST_CASE_FIXTURE(PartKitchen, "what no print has yet is printed, and nothing twice") {
    const auto all = ids_of("labels saturday.toml --no-archive");
    CHECK(ids_of("labels saturday.toml --only-new --dish brisk") == slice(all, 5, 2));
    CHECK(ids_of("labels saturday.toml --only-new --from 6") == slice(all, 7, 3));
    CHECK(ids_of("labels saturday.toml --only-new") == slice(all, 0, 5));
    const auto none = (*this)("labels saturday.toml --only-new -o none.pdf");
    CHECK(none.status == 0);
    CHECK(says(none.out, "nothing to print: each bag has its label"));
    CHECK_FALSE(fs::exists(folder / "none.pdf"));
    CHECK(as_set(ids_of("cards saturday.toml --only-new --finishing")) ==
          as_set(slice(all, 5, 2))); // labels are no cards
    // A bag more is a bag that no print has.
    auto more = day_text();
    more.replace(more.find("bags = 2"), 8, "bags = 3");
    write_file(folder / "saturday.toml", more);
    const auto added = ids_of("labels saturday.toml --only-new");
    CHECK(added.size() == 1);
    CHECK_FALSE(as_set(all).contains(added.front()));
}

TEST_CASE_FIXTURE(PartKitchen, "a bag that is to be used by a sooner date is new, too") {
    ids_of("labels saturday.toml");
    auto text = day_text();
    const auto at = text.find("servings");
    text.insert(at, "use_by = 2026-11-05\n");
    write_file(folder / "saturday.toml", text);
    const auto again = ids_of("labels saturday.toml --only-new");
    CHECK(again.size() == 5);
    CHECK(says((*this)("labels saturday.toml --only-new -o none.pdf").out, "nothing to print"));
}

TEST_CASE_FIXTURE(PartKitchen, "a bag that gets another allergen on cook day is new, and its old "
                               "label comes off") {
    const auto all = ids_of("labels saturday.toml");
    CHECK(says((*this)("labels saturday.toml --only-new -o none.pdf").out, "nothing to print"));
    auto changed = day_text();
    const std::string cider = "200 ml cider";
    write_file(folder / "saturday.toml",
               changed.replace(changed.find(cider), cider.size(), "60 g walnuts, chopped"));
    CHECK(ids_of("labels saturday.toml --only-new") == slice(all, 5, 2));
    CHECK(says((*this)("labels saturday.toml --only-new -o none.pdf").out, "nothing to print"));
}

TEST_CASE_FIXTURE(PartKitchen,
                  "a side with another allergen is told where labels are all printed") {
    const auto all = ids_of("labels saturday.toml");
    write_file(folder / "saturday.toml",
               day_text("[[package.side]]\nadd = \"300 g egg noodles\"\nin = \"pot\"\n"
                        "takes = \"8 min\"\n"));
    const auto printed = (*this)("labels saturday.toml -o part.pdf");
    CAPTURE(printed.err);
    for (std::size_t bag = 0; bag < all.size(); ++bag) {
        CHECK(says(printed.err, "caution: bag " + all[bag] + " was printed before") == (bag >= 7));
    }
    CHECK_FALSE(says((*this)("labels saturday.toml -o part.pdf").err, "was printed before"));
}

TEST_CASE_FIXTURE(PartKitchen,
                  "a bag whose allergens changed is new, and named where it is not printed") {
    const auto all = ids_of("labels saturday.toml");
    auto changed = day_text();
    changed.replace(changed.find("[\"celery\"]"), 10, "[\"celery\", \"milk\"]");
    write_file(folder / "saturday.toml", changed);
    const auto part = (*this)("labels saturday.toml --dish brisk -o part.pdf");
    CHECK(part.status == 0);
    for (std::size_t i = 0; i < 5; ++i) {
        CHECK(says(part.err, "bag " + all[i] + " was printed before with other allergens"));
        CHECK(says(part.err, "--bag " + all[i]));
    }
    CHECK(ids_of("labels saturday.toml --only-new") == slice(all, 0, 5));
    CHECK(says((*this)("labels saturday.toml --only-new -o none.pdf").out, "nothing to print"));
}

TEST_CASE_FIXTURE(
    PartKitchen,
    "a slip that is mended in a dish's name keeps its bags, whatever part is printed") {
    const auto all = ids_of("labels saturday.toml");
    auto mended = day_text();
    mended.replace(mended.find("brisket"), 7, "briskett");
    write_file(folder / "saturday.toml", mended);
    const auto part = (*this)("labels saturday.toml --dish chow --bag 1 -o part.pdf");
    CHECK(part.status == 0);
    CHECK(says(part.err, "bag " + all[5] + " is "));
    CHECK(sql("SELECT count(*) FROM bag") == "10\n");
    CHECK(ids_of("labels saturday.toml --bag " + all[5]).size() == 1); // by its old id
}

TEST_CASE_FIXTURE(PartKitchen, "a print of a part is printed again as it was, byte for byte") {
    REQUIRE((*this)("labels saturday.toml --dish stew --bag 2-3 --copies 2 -o first.pdf").status ==
            0);
    CHECK((*this)("reprint --printed 2026-10-17 -o again.pdf").err.empty());
    CHECK(file("again.pdf") == file("first.pdf"));
}

TEST_CASE_FIXTURE(PartKitchen, "what is printed again takes a part of it") {
    const auto all = ids_of("labels saturday.toml");
    CHECK(ids_of("reprint --from " + all[7]) == slice(all, 7, 3));
    CHECK(ids_of("reprint --dish stew --bag 2-3") == slice(all, 8, 2));
    CHECK(ids_of("reprint chowder --bag 4") == slice(all, 3, 1));
    CHECK(ids_of("reprint --bag " + all[2] + "," + all[6]) ==
          std::vector<std::string>{all[2], all[6]});
    CHECK(ids_of("reprint --printed 2026-10-17 --from 9") == slice(all, 8, 2));
    CHECK(ids_of("reprint --printed 2026-10-17 --dish brisk --copies 2").size() == 4);
    CHECK(as_set(ids_of("reprint --dish brisk --card --only-new")) == as_set(slice(all, 5, 2)));
    CHECK(says((*this)("reprint --dish brisk --only-new -o none.pdf").out, "nothing to print"));
    const auto none = (*this)("reprint --dish quince -o none.pdf");
    CHECK(none.status == 1);
    CHECK(says(none.err, "no dish has the words \"quince\""));
    CHECK((*this)("reprint --bag 3 -o none.pdf").status == 1);
    CHECK_FALSE(fs::exists(folder / "none.pdf"));
}

TEST_CASE_FIXTURE(PartKitchen, "the next cell is the one behind the last print on that stock") {
    const auto said = [this](const std::string& command) {
        const auto printed = (*this)(command + " --first-cell next -o sheet.pdf");
        CAPTURE(printed.err);
        CHECK(printed.status == 0);
        return printed.err;
    };
    const std::string labels = "labels saturday.toml --stock letter-2x5-4x2in ";
    CHECK(says(said(labels + "--dish brisk"), "it is not known which cells are used"));
    CHECK(says(said(labels + "--dish stew"), "starting at cell 3"));
    CHECK(says(said("reprint stew --bag 1 --stock letter-2x5-4x2in"), "starting at cell 6"));
    // Neither a trial nor what is not remembered counts.
    CHECK(says(said(labels + "--dish stew --trial"), "starting at cell 7"));
    CHECK(says(said(labels + "--dish stew --no-archive"), "starting at cell 7"));
    CHECK(says(said(labels + "--dish brisk --bag 1"), "starting at cell 7"));
    // Cells that are gone are counted: 8 is free, 9 is gone, 10 is the last.
    CHECK(says(said(labels + "--dish brisk --bag 2 --skip 9"), "starting at cell 8"));
    CHECK(says(said(labels + "--dish brisk --bag 2"), "starting at cell 10"));
    CHECK(says(said(labels + "--dish brisk --bag 2"), "used its sheet up"));
    // Another stock is another sheet.
    CHECK(says(said("labels saturday.toml --dish stew --stock a4-2x4-99x68mm"), "not known"));
    CHECK(says(said("reprint brisket --bag 2 --stock a4-2x4-99x68mm"), "starting at cell 4"));
    // A roll has no half-used sheet.
    CHECK_FALSE(says(said("labels saturday.toml --dish stew --stock roll-100x150mm"), " cell"));
}

TEST_CASE_FIXTURE(PartKitchen, "cells that are gone stay so on the sheet that is gone on with") {
    const std::string labels = "labels saturday.toml --stock letter-2x5-4x2in -o sheet.pdf ";
    REQUIRE((*this)(labels + "--bag 1 --skip 3-4").status == 0);
    REQUIRE((*this)(labels + "--bag 1-2 --first-cell next").status == 0);
    // Cell 2, then 5, which is the first of the third row: 144 pt a row, from 36 on.
    const auto boxes = run("pdftotext -bbox " + shell_word(folder / "sheet.pdf") +
                           " - | grep -o 'yMin=\"[0-9]*' | grep -o '[0-9]*' | sort -n | uniq")
                           .out;
    std::set<int> rows;
    std::istringstream numbers{boxes};
    for (int top = 0; numbers >> top;) {
        rows.insert((top - 36) / 144);
    }
    CHECK(rows == std::set<int>{0, 2});
}

TEST_CASE_FIXTURE(PartKitchen,
                  "numbers are taken as people type them, and the old option names the new one") {
    const std::string labels = "labels saturday.toml --no-archive -o sheet.pdf ";
    for (const std::string skip : {"3,4", "3-4", "3 4", "\"3 4\"", "4 --skip 3"}) {
        CAPTURE(skip);
        CHECK((*this)(labels + "--skip " + skip).status == 0);
        CHECK(
            (*this)("labels --no-archive -o other.pdf --skip " + skip + " saturday.toml").status ==
            0);
        CHECK(file("sheet.pdf") == file("other.pdf"));
    }
    const auto old = (*this)(labels + "--spoiled 3 4");
    CHECK(old.status == 2);
    CHECK(says(old.err, "there is no option --spoiled\n    hint: it is called --skip now"));
    for (const std::string wrong : {"--skip 3-x", "--skip 5-3", "--copies 0", "--copies 100",
                                    "--copies two", "--first-cell last"}) {
        CAPTURE(wrong);
        CHECK((*this)(labels + wrong).status == 2);
    }
    for (const std::string wrong : {"--dish ragout", "--bag 11", "--from 12", "--bag ABC-DEF",
                                    "--dish brisk --bag 3", "--skip 1-10", "--first-cell 11"}) {
        CAPTURE(wrong);
        fs::remove(folder / "sheet.pdf");
        CHECK((*this)(labels + wrong).status == 1);
        CHECK_FALSE(fs::exists(folder / "sheet.pdf"));
    }
}

TEST_CASE_FIXTURE(PartKitchen, "an option that names nothing prints nothing") {
    for (const std::string option : {"--dish ''", "--dish ' '", "--bag ''", "--from ''"}) {
        CAPTURE(option);
        const auto refused = (*this)("labels saturday.toml " + option + " -o none.pdf");
        CHECK(refused.status == 2);
        CHECK(says(refused.err, "nothing is named"));
        CHECK_FALSE(fs::exists(folder / "none.pdf"));
    }
    CHECK(ids_of("labels saturday.toml --dish brisk").size() == 2);
}

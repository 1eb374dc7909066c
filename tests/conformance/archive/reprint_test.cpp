// Printing again from the archive, where something is not as it was.

#include "kitchen.h"

#include <doctest/doctest.h>
#include <fmt/format.h>

using namespace thawslip::test_support;

namespace {

std::string one_dish(const std::string& dish, const std::string& more = {}) {
    return "[day]\nmade = 2026-10-17\n[[package]]\ndish = \"" + dish +
           "\"\nservings = 2\nbags = 2\nuse_by = 2026-12-01\n" + more;
}

} // namespace

TEST_CASE_FIXTURE(Kitchen, "one bag of a print of many days is printed from its own day alone") {
    std::string days;
    for (int i = 0; i < 12; ++i) {
        write_file(folder / fmt::format("{}.toml", i), one_dish(fmt::format("Pot {}", i)));
        days += fmt::format("{}.toml ", i);
    }
    REQUIRE((*this)("labels " + days + "-o all.pdf").status == 0);
    // A description that could not be read any longer would stop a reprint that reads them all.
    sql("UPDATE day SET description = CAST('no TOML' AS BLOB) WHERE id <> 5");
    const auto id = sql("SELECT i.id FROM bag_id i JOIN bag b ON b.id = i.bag JOIN package p ON "
                        "p.id = b.package WHERE p.day = 5 AND b.number = 2");
    const auto again = (*this)("reprint " + id.substr(0, 11) + " -o one.pdf");
    CAPTURE(again.err);
    CHECK(again.status == 0);
    CHECK(says(again.out, "1 label on"));
    const auto text = run("pdftotext " + shell_word(folder / "one.pdf") + " -").out;
    CHECK(says(text, id.substr(0, 11)));
}

TEST_CASE_FIXTURE(Kitchen, "a print whose description was edited since comes with a caution") {
    write_file(folder / "pot.toml", one_dish("Bean and barley pot"));
    REQUIRE((*this)("labels pot.toml -o first.pdf").status == 0);
    now = "1792332300"; // a day later
    write_file(folder / "pot.toml",
               one_dish("Bean and barley pot", "contains = [\"barley\", \"celery\"]\n"));
    const auto edited = (*this)("labels pot.toml -o second.pdf");
    CHECK(edited.status == 0);
    CHECK(says(edited.err, "take its old label off"));
    const auto before = (*this)("reprint --printed 2026-10-17 -o again.pdf");
    CHECK(before.status == 0);
    CHECK(says(before.err, "caution: "));
    CHECK(says(before.err, "was edited and printed again on 2026-10-18"));
    CHECK(file("again.pdf") == file("first.pdf"));
    const auto by_dish = (*this)("reprint barley pot -o now.pdf");
    CHECK(by_dish.err.empty());
    CHECK(file("now.pdf") == file("second.pdf"));
}

TEST_CASE_FIXTURE(Kitchen, "a bag whose day came without its print gets a label as set now") {
    write_file(folder / "pot.toml", one_dish("Bean and barley pot"));
    REQUIRE((*this)("labels pot.toml -o first.pdf").status == 0);
    sql("DELETE FROM print_key; DELETE FROM print_day; DELETE FROM print");
    const auto again = (*this)("reprint barley -o again.pdf");
    CAPTURE(again.err);
    CHECK(again.status == 0);
    CHECK(file("again.pdf") == file("first.pdf"));
}

TEST_CASE_FIXTURE(Kitchen, "a description that is not what was recorded is printed by no command") {
    write_file(folder / "pot.toml", one_dish("Bean and barley pot", "contains = [\"barley\"]\n"));
    write_file(folder / "soup.toml", one_dish("Leek soup"));
    REQUIRE((*this)("labels pot.toml soup.toml -o first.pdf").status == 0);
    const auto id = first_id("barley");
    sql("UPDATE day SET description = CAST(replace(CAST(description AS TEXT), '\"barley\"', "
        "'\"walnut\"') AS BLOB)");
    for (const std::string command :
         {"reprint barley pot -o again.pdf", "reprint --printed 2026-10-17 -o again.pdf",
          "plan barley --eat '2026-11-01 18:00'", "archive export out"}) {
        CAPTURE(command);
        const auto refused = (*this)(command);
        CHECK(refused.status == 1);
        CHECK(says(refused.err, "error: the description of 2026-10-17, read from "));
        CHECK(says(refused.err, "pot.toml is not what was recorded: its hash is another"));
        CHECK_FALSE(says(refused.out + refused.err, "alnut"));
    }
    const auto read = (*this)("read " + id);
    CHECK(says(read.err, "its hash is another"));
    CHECK(read.out.empty());
    CHECK_FALSE(std::filesystem::exists(folder / "again.pdf"));
    CHECK((*this)("reprint leek -o soup.pdf").status == 0); // whose description is sound
}

TEST_CASE_FIXTURE(Kitchen, "of an edited description only what was edited is cautioned about") {
    const std::string soup =
        "[[package]]\ndish = \"Leek soup\"\nservings = 2\nuse_by = 2026-12-01\n";
    write_file(folder / "pot.toml", one_dish("Bean and barley pot") + soup);
    REQUIRE((*this)("labels pot.toml -o first.pdf").status == 0);
    const auto id = first_id("barley");
    now = "1792332300"; // a day later the pot is no longer described
    write_file(folder / "pot.toml",
               "[day]\nmade = 2026-10-17\n" + soup + "contains = [\"milk\"]\n");
    REQUIRE((*this)("labels pot.toml -o second.pdf").status == 0);
    for (const auto& which : {id, std::string{"barley"}, std::string{"leek"}}) {
        CAPTURE(which);
        const auto again = (*this)("reprint " + which + " -o again.pdf");
        CHECK(again.status == 0);
        CHECK(again.err.empty());
    }
    CHECK(says((*this)("reprint --printed 2026-10-17 -o again.pdf").err,
               "was edited and printed again on 2026-10-18"));
    CHECK((*this)("reprint --printed 2026-10-18 -o again.pdf").err.empty());
}

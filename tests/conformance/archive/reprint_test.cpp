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

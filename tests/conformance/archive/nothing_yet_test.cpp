// What is said where nothing has been printed yet, or the archive's place is mistyped; and that to
// ask makes no archive.

#include "kitchen.h"

#include <doctest/doctest.h>

namespace nothing_yet_test {

using namespace thawslip::test_support;

TEST_CASE("where there is no archive, each command says where it was looked for") {
    const Kitchen kitchen;
    const auto missing = "there is no archive at " + kitchen.archive;
    for (const std::string command :
         {"archive check", "freezer list", "freezer next", "freezer list --without milk"}) {
        CAPTURE(command);
        const auto asked = kitchen(command);
        CHECK(asked.status == 0);
        CHECK(says(asked.out, missing + ": nothing has been printed yet\n"));
    }
    for (const std::string command :
         {"archive backup copy.db", "archive export out", "archive repair", "freezer eaten stew",
          "freezer undo", "freezer history stew", "freezer renamed Stew Soup",
          "reprint stew -o out.pdf", "reprint --only-new -o out.pdf"}) {
        CAPTURE(command);
        const auto asked = kitchen(command);
        CHECK(asked.status == 1);
        CHECK(says(asked.err, "error: " + missing + ": nothing has been printed yet\n"));
    }
    CHECK_FALSE(std::filesystem::exists(kitchen.archive));
    for (const auto* name : {"copy.db", "out", "out.pdf"}) {
        CHECK_FALSE(std::filesystem::exists(kitchen.folder / name));
    }
}

TEST_CASE("an archive that is a file is sent nowhere") {
    const Kitchen kitchen;
    REQUIRE(kitchen("labels day.toml -o day.pdf").status == 0);
    const auto sent = kitchen("archive send");
    CHECK(sent.status == 1);
    CHECK(says(sent.err,
               "error: the archive is a file: there is nothing to send it to; expected an "
               "address, postgresql://"));
}

TEST_CASE("what is to be reprinted has to be named") {
    const Kitchen kitchen;
    const auto unnamed = kitchen("reprint -o again.pdf");
    CHECK(unnamed.status == 2);
    CHECK(says(unnamed.err, "error: a bag's id, words of a dish, --dish, --bag, --from, --only-new "
                            "or --printed is missing\n"));
}

TEST_CASE("what makes a server ready is SQL, and needs no archive") {
    const Kitchen kitchen;
    const auto sql = kitchen("archive sql");
    CHECK(sql.status == 0);
    CHECK(says(sql.out, "CREATE SCHEMA"));
    CHECK_FALSE(std::filesystem::exists(kitchen.archive));
}

} // namespace nothing_yet_test

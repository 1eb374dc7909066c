// What is about an archive's file, and so about no server.

#include "samples.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <filesystem>

namespace file_test {

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

std::string shell(const std::string& path, const std::string& sql) {
    return run("sqlite3 " + shell_word(path) + " " + shell_word(sql)).out;
}

const PackageRecord stew = package("Squash and red lentil stew", 3);
const PackageRecord soup = package("Chestnut and kale soup", 2, date(2026, 11, 1));

} // namespace

TEST_CASE("an archive is made on first writing, for its owner alone, and never by reading") {
    const Scratch scratch;
    const auto missing = Archive::open(scratch.path, Mode::Read);
    REQUIRE_FALSE(missing.ok());
    CHECK(missing.fault().kind == ArchiveFault::Kind::Missing);
    CHECK_FALSE(fs::exists(scratch.path));
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    CHECK(fs::status(scratch.path).permissions() ==
          (fs::perms::owner_read | fs::perms::owner_write));
    CHECK(fs::status(scratch.path + "-wal").permissions() ==
          (fs::perms::owner_read | fs::perms::owner_write));
    CHECK(shell(scratch.path, "PRAGMA journal_mode") == "wal\n");
    CHECK(shell(scratch.path, "PRAGMA integrity_check; PRAGMA foreign_key_check") == "ok\n");
}

TEST_CASE("a later schema, another database and a damaged file are refused untouched") {
    const Scratch scratch;
    const auto path = scratch.folder / "archive.db";
    auto expected = ArchiveFault::Kind::NewerSchema;
    SUBCASE("a later schema") {
        opened(path).record(print({day({stew})}));
        shell(path, "PRAGMA user_version = 99; PRAGMA wal_checkpoint(TRUNCATE)");
    }
    SUBCASE("another database") {
        shell(path, "CREATE TABLE shopping (what TEXT)");
        expected = ArchiveFault::Kind::NotOurs;
    }
    SUBCASE("another file") {
        write_file(path, std::string(5000, 'x'));
        expected = ArchiveFault::Kind::NotOurs;
    }
    SUBCASE("a schema of before the first") {
        opened(path).record(print({day({stew})}));
        shell(path, "PRAGMA user_version = -1; PRAGMA wal_checkpoint(TRUNCATE)");
        expected = ArchiveFault::Kind::Damaged;
    }
    SUBCASE("a database in other characters") {
        shell(path, "PRAGMA encoding = 'UTF-16le'; PRAGMA application_id = 1414021463; PRAGMA "
                    "user_version = 1; CREATE TABLE day (what TEXT)");
        expected = ArchiveFault::Kind::NotOurs;
    }
    const auto before = read_file(path);
    for (const auto mode : {Mode::Read, Mode::Write}) {
        const auto refused = Archive::open(path, mode);
        REQUIRE_FALSE(refused.ok());
        CAPTURE(refused.fault().message);
        CHECK(refused.fault().kind == expected);
        CHECK(read_file(path) == before);
    }
}

TEST_CASE("what a stranger changed in an archive is told row by row") {
    const auto id = stew.bags.front();
    const struct {
        const char* sql;
        std::string said;
    } cases[] = {
        {"UPDATE day SET description = 'another'",
         "the description of 2026-10-17 (revision 1, read from /orchard/saturday.toml) is not what "
         "was recorded: its hash is another"},
        {"UPDATE day SET kitchen = 'a' || char(10) || 'b'",
         "the description of 2026-10-17 has a kitchen's name that cannot be"},
        {"UPDATE package SET servings = 101 WHERE position = 1",
         "\"Squash and red lentil stew\" of 2026-10-17 serves 101, expected 1 to 100"},
        {"UPDATE package SET allergens = 'celery'", "\"Squash and red lentil stew\" of 2026-10-17 "
                                                    "has allergens, kinds of food or a thaw method "
                                                    "that cannot be"},
        {"UPDATE package SET thaw = 'on the sill'", "\"Squash and red lentil stew\" of 2026-10-17 "
                                                    "has allergens, kinds of food or a thaw method "
                                                    "that cannot be"},
        {"UPDATE bag_event SET state = 'lent' WHERE bag = 1",
         "bag " + id + " has a state that cannot be"},
        {"UPDATE bag SET state = 'eaten' WHERE id = 1", "bag " + id + " is listed as eaten since "},
        {"UPDATE bag SET number = 4 WHERE id = 1",
         "bag " + id + " is beyond the number of bags of its dish"},
        {"DELETE FROM bag_id WHERE bag = 1", "bag 1 has no id, or several"},
        {"DELETE FROM day", "row 1 of package names a row of day that is not there"},
        {"CREATE TABLE shopping (what TEXT)", "the table \"shopping\" is none that thawslip makes"},
        {"DROP TABLE sheet", "the table \"sheet\" is missing"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.sql);
        const Scratch scratch;
        opened(scratch.path).record(print({day({stew, soup})}));
        CHECK(opened(scratch.path, Mode::Read).check().empty());
        CHECK(shell(scratch.path, c.sql).empty());
        const auto wrong = opened(scratch.path, Mode::Read).check();
        CHECK(std::ranges::any_of(
            wrong, [&c](const std::string& fault) { return fault.starts_with(c.said); }));
    }
}

TEST_CASE("a station that has counted as far as can be counted still notes what is sound") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew, soup})}));
    shell(scratch.path, "UPDATE bag_event SET seq = " + std::to_string(std::int64_t{1} << 40));
    CHECK(archive.check().empty());
    CHECK(archive.set_state(soup.bags, State::Eaten, "2026-11-01T08:00:00") == 2);
    CHECK(archive.check().empty());
    CHECK(archive.bag(soup.bags[1])->state == State::Eaten);
}

TEST_CASE("a backup is a whole archive, also while another program writes") {
    const Scratch scratch;
    auto archive = opened(scratch.path);
    archive.record(print({day({stew})}));
    auto other = opened(scratch.path);
    const auto copy = scratch.folder / "copy.db";
    archive.back_up(copy);
    other.record(print({day({soup})}));
    CHECK(opened(copy).bags(Which::All).size() == 3);
    CHECK(shell(copy, "PRAGMA integrity_check; PRAGMA foreign_key_check") == "ok\n");
    CHECK_THROWS_AS(archive.back_up(copy), ArchiveFailure);
}

TEST_CASE("a copy is read without a change to the file or to what stands beside it") {
    const Scratch scratch;
    {
        auto archive = opened(scratch.path);
        archive.record(print({day({stew})}));
    }
    const auto before = read_file(scratch.path);
    auto copy = Archive::open(scratch.path, Mode::Copy);
    REQUIRE(copy.ok());
    auto there = std::move(copy).value();
    CHECK(there.check().empty());
    CHECK(there.contents() == opened(scratch.path, Mode::Read).contents());
    there.set_state(stew.bags, State::Eaten, "2026-11-01T18:00:00");
    CHECK(opened(scratch.path, Mode::Read).bags(Which::InFreezer).size() == 3);
    CHECK(read_file(scratch.path) == before);
}

} // namespace file_test

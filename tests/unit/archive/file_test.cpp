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
    const auto before = read_file(path);
    for (const auto mode : {Mode::Read, Mode::Write}) {
        const auto refused = Archive::open(path, mode);
        REQUIRE_FALSE(refused.ok());
        CAPTURE(refused.fault().message);
        CHECK(refused.fault().kind == expected);
        CHECK(read_file(path) == before);
    }
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

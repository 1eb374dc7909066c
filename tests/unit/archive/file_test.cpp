// What is about an archive's file, and so about no server.

#include "archive/restore.h"
#include "samples.h"
#include "schema_2.h"
#include "schema_3.h"
#include "support/as_nobody.h"
#include "support/command.h"
#include "support/skip.h"

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
    SUBCASE("the very next schema") {
        opened(path).record(print({day({stew})}));
        const auto version = std::stoi(shell(path, "PRAGMA user_version"));
        shell(path, "PRAGMA user_version = " + std::to_string(version + 1) +
                        "; PRAGMA wal_checkpoint(TRUNCATE)");
    }
    SUBCASE("no schema, and tables all the same") {
        opened(path).record(print({day({stew})}));
        shell(path, "PRAGMA user_version = 0; PRAGMA wal_checkpoint(TRUNCATE)");
        expected = ArchiveFault::Kind::Damaged;
    }
    SUBCASE("another program's empty database") {
        shell(path, "PRAGMA application_id = 7");
        expected = ArchiveFault::Kind::NotOurs;
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

TEST_CASE("each thing that is wrong is told once, and what is right not at all") {
    const auto id = stew.bags.front();
    const std::string listed = "bag " + id + " is listed as ";
    const std::string text = "has allergens, kinds of food or a thaw method that cannot be";
    const struct {
        const char* sql;
        std::vector<std::string> said;
    } cases[] = {
        {"UPDATE package SET thaw = NULL, thaw_minutes = NULL", {}},
        {"UPDATE package SET allergens = NULL, classes = NULL", {}},
        {"UPDATE package SET allergens = '', classes = ''", {}},
        {"UPDATE package SET classes = 'soup' WHERE position = 2",
         {"\"" + soup.dish + "\" of 2026-10-17 " + text}},
        {"UPDATE package SET classes = NULL WHERE position = 2",
         {"\"" + soup.dish + "\" of 2026-10-17 " + text}},
        {"UPDATE bag SET changed = '2026-10-01T00:00:00' WHERE id = 1",
         {listed + "frozen since 2026-10-01T00:00:00, but what was last noted of it is frozen, "
                   "2026-10-17T14:05:00"}},
        {"UPDATE bag SET number = 0 WHERE id = 1",
         {"bag " + id + " is beyond the number of bags of its dish"}},
        {"UPDATE bag SET number = 3 WHERE id = 1",
         {"bag " + stew.bags[2] + " has the number of another bag of its dish"}},
        {"INSERT INTO bag_id VALUES ('K7Q-2M4-9XC', 1, 1)", {"bag 1 has no id, or several"}},
        {"UPDATE bag_id SET id = 'K7Q' WHERE bag = 1",
         {"a bag has the id \"K7Q\", which cannot be one"}},
        {"DELETE FROM print_day", {"the print of 2026-10-17T14:05:00 is of no day"}},
        {"UPDATE print SET first_at = 'yesterday'", {"a print has a time that cannot be"}},
        {"UPDATE package SET words = 'plums' WHERE position = 2",
         {"the index of words does not say what the dishes say"}},
        {"DROP INDEX day_hash", {"the index \"day_hash\" is missing"}},
        {"DROP INDEX day_hash; UPDATE package SET servings = 0 WHERE position = 1",
         {"the index \"day_hash\" is missing",
          "\"" + stew.dish + "\" of 2026-10-17 serves 0, expected 1 to 100"}},
        {"CREATE INDEX own ON day (file)", {"the index \"own\" is none that thawslip makes"}},
        {"ALTER TABLE sheet ADD COLUMN colour TEXT",
         {"the table \"sheet\" is not as thawslip makes it"}},
    };
    for (const auto& c : cases) {
        CAPTURE(c.sql);
        const Scratch scratch;
        opened(scratch.path).record(print({day({stew, soup})}));
        CHECK(shell(scratch.path, c.sql).empty());
        CHECK(opened(scratch.path, Mode::Read).check() == c.said);
    }
}

TEST_CASE("what SQLite finds broken is told in its words, and nothing that is read of it") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({stew, soup})}));
    // An index in the order of another: its definition is changed, followed, and put back.
    const auto define = [&](const char* columns) {
        shell(scratch.path, std::string{"PRAGMA writable_schema = ON; UPDATE sqlite_schema SET "
                                        "sql = 'CREATE INDEX day_file ON day "} +
                                columns + "' WHERE name = 'day_file'");
    };
    define("(made, file)");
    shell(scratch.path, "REINDEX day_file; UPDATE package SET servings = 0");
    define("(file, made)");
    const auto wrong = opened(scratch.path, Mode::Read).check();
    REQUIRE_FALSE(wrong.empty());
    for (const auto& fault : wrong) {
        CAPTURE(fault);
        CHECK(fault.find("day_file") != std::string::npos);
    }
}

TEST_CASE("spaces and remarks in what an archive is made of say nothing, words do") {
    const Scratch scratch;
    opened(scratch.path).record(print({day({stew})}));
    const auto change = [&](const std::string& before, const std::string& after) {
        shell(scratch.path, "PRAGMA writable_schema = ON; UPDATE sqlite_schema SET sql = "
                            "replace(sql, '" +
                                before + "', " + after + ") WHERE name = 'sheet'");
        return opened(scratch.path, Mode::Read).check();
    };
    CHECK(change("NOT NULL,", "'NOT NULL  ,  -- as bought, or not' || char(10) || '   '").empty());
    CHECK(change("TEXT", "'TEXT  '").empty());
    CHECK(change("NOT NULL", "'NOT' || char(10) || 'NULL'").empty());
    CHECK(change("(", "' ( '").empty());
    CHECK(change("next_cell", "'next_ cell'").size() == 1);
}

TEST_CASE("archives of older schemas are led forward when they are read, whole and sound") {
    for (const auto sql : {schema_2_archive, schema_3_archive}) {
        const Scratch scratch;
        const auto old = scratch.folder / "old.db";
        write_file(scratch.folder / "old.sql", std::string{sql});
        REQUIRE(run("sqlite3 " + shell_word(old) + " < " + shell_word(scratch.folder / "old.sql"))
                    .err.empty());
        auto copy = opened(old, Mode::Copy);
        auto archive = opened(old, Mode::Read);
        CHECK(archive.check().empty());
        CHECK_FALSE(archive.bags(Which::InFreezer).empty());
        CHECK(copy.contents() == archive.contents());
        auto fresh = opened(scratch.path);
        fresh.merge(archive.contents());
        CHECK(fresh.check().empty());
        CHECK(fresh.contents().bags == archive.contents().bags);
    }
}

TEST_CASE("what cannot be an archive's place is refused with the reason") {
    const ScratchFolder folder;
    const auto refusal = [](const std::string& path, Mode mode) {
        const auto archive = Archive::open(path, mode, std::chrono::milliseconds{0});
        return archive ? ArchiveFault{} : archive.fault();
    };
    using Kind = ArchiveFault::Kind;
    fs::create_symlink("round.db", folder / "round.db");
    write_file(folder / "file", "x");
    fs::create_directory(folder / "folder");
    for (const auto mode : {Mode::Read, Mode::Write, Mode::Copy}) {
        const auto round = refusal(folder / "round.db", mode);
        CHECK(round.kind == Kind::CannotOpen);
        CHECK(round.message.starts_with("cannot open the archive " + (folder / "round.db") + ": "));
        const auto no_file = refusal(folder / "folder", mode);
        CHECK(no_file.kind == Kind::NotOurs);
        CHECK(no_file.message == (folder / "folder") + " is no file");
    }
    CHECK(refusal(folder / "file/archive.db", Mode::Read).kind == Kind::Missing);
    CHECK(refusal(folder / "none/archive.db", Mode::Copy).kind == Kind::Missing);
    // A name of more bytes than a file has (POSIX.1-2017, limits.h, NAME_MAX).
    CHECK(refusal(folder / std::string(300, 'a'), Mode::Read).kind == Kind::CannotOpen);
    CHECK(refusal(folder / std::string(300, 'a'), Mode::Write).kind == Kind::CannotOpen);
    CHECK(Archive::back_up(folder / "none.db", folder / "copy.db")->kind == Kind::Missing);
    CHECK(Archive::back_up(folder / "round.db", folder / "copy.db")->kind == Kind::CannotOpen);
    const auto on_server = Archive::back_up("postgresql://cook@store/cold", folder / "copy.db");
    REQUIRE(on_server);
    CHECK(
        on_server->message.starts_with("the archive postgresql://cook@store/cold is on a server"));
    CHECK_FALSE(fs::exists(folder / "copy.db"));
    opened(folder / "sound.db").back_up(folder / "sound-copy.db");
    CHECK_THROWS_AS(restore(folder / "round.db", folder / "sound-copy.db"), ArchiveFailure);
}

TEST_CASE("a file that was there and empty becomes its owner's alone, by writing and not before") {
    const ScratchFolder folder;
    const auto path = folder / "touched.db";
    write_file(path, "");
    fs::permissions(path, fs::perms(0644));
    for (const auto mode : {Mode::Read, Mode::Copy}) {
        const auto empty = Archive::open(path, mode);
        REQUIRE_FALSE(empty.ok());
        CHECK(empty.fault().kind == ArchiveFault::Kind::Missing);
        CHECK(empty.fault().message ==
              "the archive " + path + " is empty: nothing has been printed yet");
    }
    CHECK(fs::status(path).permissions() == fs::perms(0644));
    opened(path).record(print({day({stew})}));
    CHECK(fs::status(path).permissions() == fs::perms(0600));
}

TEST_CASE("whatever a folder is called, the archive is in it and nowhere else") {
    // Signs that mean something in a URI (SQLite, "Uniform Resource Identifiers").
    for (const char* name : {"50%20", "what?", "a#b", "a?immutable=1&mode=memory", ":memory:"}) {
        CAPTURE(name);
        const ScratchFolder folder;
        const auto path = folder / (std::string{name} + "//archive.db");
        opened(path).record(print({day({stew})}));
        CHECK(fs::exists(folder.path() / name / "archive.db"));
        CHECK(std::distance(fs::directory_iterator{folder.path()}, {}) == 1);
        CHECK(opened(path, Mode::Read).bags(Which::All).size() == 3);
        CHECK(opened(path, Mode::Copy).bags(Which::All).size() == 3);
    }
}

TEST_CASE("an archive that is another's is not read, and that is told") {
    const ScratchFolder folder;
    const auto path = folder / "archive.db";
    opened(path).record(print({day({stew})}));
    fs::permissions(folder.path(), fs::perms(0755));
    fs::permissions(path, fs::perms::none);
    const AsNobody nobody;
    if (!nobody.worked()) {
        return skip("nobody cannot be forbidden anything here");
    }
    const auto refused = Archive::open(path, Mode::Read);
    REQUIRE_FALSE(refused.ok());
    CHECK(refused.fault().kind == ArchiveFault::Kind::CannotOpen);
    CHECK(refused.fault().message == "cannot open the archive " + path + ": Permission denied");
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

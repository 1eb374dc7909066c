// A backup comes back whole, what was there is kept, and what is rotten is found and named.

#include "kitchen.h"

using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

/// A kitchen that has printed, with a backup of then.
struct Backed : Kitchen {
    Backed() {
        REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
        REQUIRE((*this)("archive backup backup.db").status == 0);
    }
    int bags() const { return std::stoi(sql("SELECT count(*) FROM bag")); }
    void print_more() const {
        write_file(folder / "more.toml", "[day]\nmade = 2026-10-18\n[[package]]\ndish = \"Leek "
                                         "pot\"\nservings = 2\nfood = \"soup or stew\"\n");
        REQUIRE((*this)("labels more.toml -o more.pdf").status == 0);
    }
};

} // namespace

TEST_CASE("a backup is restored, and the archive of before is kept beside") {
    const Backed kitchen;
    const int then = kitchen.bags();
    kitchen.print_more();
    const auto restored = kitchen("archive restore backup.db");
    CHECK(restored.status == 0);
    CHECK(says(restored.out, "archive.db.before-1"));
    CHECK(kitchen.bags() == then);
    CHECK(kitchen("archive check").status == 0);
    const auto before = kitchen.archive + ".before-1";
    CHECK(run("sqlite3 " + shell_word(before) + " 'SELECT count(*) FROM bag'").out ==
          std::to_string(then + 1) + "\n");
    CHECK(mode_of(kitchen.archive) == 0600U);
    kitchen.print_more(); // it can be written on with
    CHECK(kitchen.bags() == then + 1);
    CHECK(kitchen("archive restore backup.db").status == 0); // and again, under another name
    CHECK(fs::exists(kitchen.archive + ".before-2"));
}

TEST_CASE("a log that a killed program left behind is not written over the backup") {
    const Backed kitchen;
    const int then = kitchen.bags();
    kitchen.print_more();
    // What a kill leaves: the log of changes, and the file that they are not in yet.
    run("cd " + shell_word(kitchen.folder.path().string()) +
        "; { echo 'PRAGMA wal_autocheckpoint = 0; UPDATE bag SET state = \"eaten\";'; echo "
        "'.shell cp archive.db-wal kept-wal; cp archive.db kept'; } | sqlite3 archive.db");
    fs::rename(kitchen.folder / "kept-wal", kitchen.archive + "-wal");
    fs::rename(kitchen.folder / "kept", kitchen.archive);
    CHECK(kitchen("archive restore backup.db").status == 0);
    CHECK(kitchen.bags() == then);
    CHECK(kitchen.sql("SELECT count(*) FROM bag WHERE state = 'eaten'") == "0\n");
    CHECK(kitchen("archive check").status == 0);
}

TEST_CASE("a log without its archive, and an archive that is none, make way as well") {
    const Backed kitchen;
    for (const std::string broken : {"", "no database at all"}) {
        fs::remove(kitchen.archive);
        if (!broken.empty()) {
            write_file(kitchen.archive, broken);
        }
        write_file(kitchen.archive + "-wal", "of nobody knows what");
        CHECK(kitchen("archive restore backup.db").status == 0);
        CHECK(!fs::exists(kitchen.archive + "-wal"));
        CHECK(kitchen("archive check").status == 0);
    }
    CHECK(read_file(kitchen.archive + ".before-1-wal") == "of nobody knows what");
    CHECK(read_file(kitchen.archive + ".before-2") == "no database at all");
}

TEST_CASE("what is no sound backup changes nothing") {
    const Backed kitchen;
    const auto before = read_file(kitchen.archive);
    write_file(kitchen.folder / "text.db", "[day]\n");
    write_file(kitchen.folder / "empty.db", "");
    run("cd " + shell_word(kitchen.folder.path().string()) +
        "; cp backup.db rotten.db; sqlite3 rotten.db \"UPDATE day SET description = 'x'\"; "
        "sqlite3 other.db 'CREATE TABLE t (x)'; head -c 9000 backup.db > cut.db");
    for (const std::string file :
         {"text.db", "empty.db", "rotten.db", "other.db", "cut.db", "nothing.db", "archive.db"}) {
        CAPTURE(file);
        const auto outcome = kitchen("archive restore " + file);
        CHECK(outcome.status == 1);
        CHECK(says(outcome.err, "error: "));
        CHECK(read_file(kitchen.archive) == before);
        CHECK(!fs::exists(kitchen.archive + ".before-1"));
    }
}

TEST_CASE("check finds what SQLite's own check cannot know") {
    Backed kitchen;
    const auto sound = kitchen.archive;
    const struct {
        std::string change;
        std::string told;
    } cases[] = {
        {"UPDATE day SET description = CAST(replace(CAST(description AS TEXT), 'celery', 'salary') "
         "AS BLOB)",
         "its hash is another"},
        {"UPDATE package SET words = 'something else' WHERE id = 1", "the index of words"},
        {"UPDATE package SET servings = 0 WHERE id = 1", "serves 0, expected 1 to 100"},
        {"UPDATE package SET servings = 7 WHERE id = 1", "serves 7 in the archive, 6 in the"},
        {"UPDATE package SET allergens = '' WHERE id = 1", "contains: none in the archive"},
        {"UPDATE package SET classes = 'raw meat' || char(10) WHERE id = 1", "is of the kinds: "},
        {"UPDATE package SET grams = 9e999 WHERE id = 1", "has a weight that cannot be"},
        {"UPDATE package SET bags = 30000000 WHERE id = 1", "has a number of bags that cannot be"},
        {"UPDATE package SET keep_until = '2026-13-45' WHERE id = 1", "has a date that cannot be"},
        {"UPDATE package SET dish = 'a' || char(8238) || 'b' WHERE id = 1",
         "has a name that cannot be"},
        {"UPDATE bag SET number = 77 WHERE id = 1", "beyond the number of bags"},
        {"DELETE FROM print_day", "the print of 2026-10-17T14:05:00 is of no day"},
        {"CREATE VIEW spying AS SELECT * FROM bag", "the view \"spying\" is none that thawslip"},
        {"CREATE TRIGGER t AFTER UPDATE ON bag BEGIN SELECT 1; END", "the trigger \"t\" is none"},
        {"DROP INDEX day_hash", "the index \"day_hash\" is missing"},
    };
    for (const auto& c : cases) {
        CAPTURE(c.change);
        fs::copy_file(kitchen.folder / "backup.db", kitchen.folder / "rotten.db",
                      fs::copy_options::overwrite_existing);
        run("sqlite3 " + shell_word(kitchen.folder / "rotten.db") + " " + shell_word(c.change));
        kitchen.archive = kitchen.folder / "rotten.db";
        const auto outcome = kitchen("archive check");
        kitchen.archive = sound;
        CHECK(outcome.status == 3);
        CHECK(says(outcome.err, c.told));
        CHECK(says(outcome.err, "thawslip archive restore FILE"));
        CHECK(kitchen("archive check").status == 0); // of the one that is in use
    }
}

TEST_CASE("repair rebuilds the index of words, keeps the rest and names what it cannot") {
    const Backed kitchen;
    const int then = kitchen.bags();
    CHECK(says(kitchen("archive repair").out, "sound, nothing to repair"));
    CHECK(!fs::exists(kitchen.archive + ".before-1"));
    kitchen.sql("UPDATE dish_words_data SET block = x'00' WHERE id > 10");
    kitchen.sql("DELETE FROM dish_words_idx");
    REQUIRE(kitchen("archive check").status == 3);
    const auto repaired = kitchen("archive repair");
    CHECK(repaired.status == 0);
    CHECK(says(repaired.out, "repaired: the index of words"));
    CHECK(fs::exists(kitchen.archive + ".before-1"));
    CHECK(kitchen("archive check").status == 0);
    CHECK(kitchen.bags() == then);
    CHECK(says(kitchen("freezer find compote").out, "ompote"));
    kitchen.sql("UPDATE day SET description = 'x'");
    const auto cannot = kitchen("archive repair");
    CHECK(cannot.status == 3);
    CHECK(says(cannot.err, "its hash is another"));
    CHECK(says(cannot.err, "thawslip archive restore FILE"));
    CHECK(!fs::exists(kitchen.archive + ".before-2"));
    CHECK(kitchen.bags() == then);
}

TEST_CASE("what a merge would bring in is held to the limits of a day and to our schema") {
    const Backed kitchen;
    for (const std::string change :
         {"UPDATE package SET servings = -5", "UPDATE package SET grams = 9e999",
          "UPDATE package SET bags = 30000000", "UPDATE package SET dish = char(155) || '31m'",
          "UPDATE day SET kitchen = 'a' || char(8232) || 'b'",
          "ALTER TABLE day RENAME TO days; CREATE VIEW day AS SELECT * FROM days",
          "CREATE TRIGGER t AFTER UPDATE ON bag BEGIN DELETE FROM bag; END",
          "UPDATE package SET dish = printf('%.*c', 3000000, 'a')",
          "WITH RECURSIVE n(i) AS (SELECT 1 UNION ALL SELECT i + 1 FROM n WHERE i < 1200) INSERT "
          "INTO bag_event SELECT 1, 1700000000000 + i, '', 0, 'out', '2026-10-18 10:00', "
          "1700000000, 0, '', 0, NULL, '', 0 FROM n",
          "UPDATE day SET made = '1066-10-14'", "UPDATE package SET thaw_minutes = 9999999999"}) {
        CAPTURE(change);
        fs::copy_file(kitchen.folder / "backup.db", kitchen.folder / "other.db",
                      fs::copy_options::overwrite_existing);
        run("sqlite3 " + shell_word(kitchen.folder / "other.db") + " " + shell_word(change));
        const auto outcome = kitchen("archive merge other.db");
        CHECK(outcome.status == 1);
        CHECK(outcome.err.size() < 1'000);
        CHECK(says(outcome.err, "error: "));
        CHECK(kitchen("archive check").status == 0);
    }
    run("cd " + shell_word(kitchen.folder.path().string()) +
        "; sqlite3 utf16.db \"PRAGMA encoding = 'UTF-16'; PRAGMA application_id = 1414023511; "
        "CREATE TABLE day (id); PRAGMA user_version = 2\"");
    CHECK(kitchen("archive merge utf16.db").status == 1);
}

TEST_CASE("repair takes counts and allergens from the descriptions") {
    const Backed kitchen;
    const auto sound = kitchen.sql("SELECT allergens, servings, dish, words FROM package");
    kitchen.sql("UPDATE package SET allergens = '', servings = 9, dish = 'Other', words = 'x'");
    REQUIRE(kitchen("archive check").status == 3);
    CHECK(kitchen("archive repair").status == 0);
    CHECK(kitchen.sql("SELECT allergens, servings, dish, words FROM package") == sound);
    CHECK(kitchen("archive check").status == 0);
}

TEST_CASE("what the archive of before holds and the backup does not is said") {
    const Backed kitchen;
    CHECK(kitchen("archive restore backup.db").err.empty());
    const auto id = kitchen.first_id("squash");
    REQUIRE(kitchen("freezer eaten " + id).status == 0);
    kitchen.print_more();
    const auto restored = kitchen("archive restore backup.db");
    CHECK(restored.status == 0);
    CHECK(says(restored.err, "in the archive of before: 1 bag, 1 later state, 1 description, 1 "
                             "print"));
    CHECK(says(restored.err, "thawslip archive merge "));
    REQUIRE(kitchen("archive merge archive.db.before-2").status == 0);
    CHECK(says(kitchen("freezer list --all").out, "eaten"));
    CHECK(kitchen.first_id("leek").size() == 11);
}

TEST_CASE("on a new computer a backup makes the folders that it goes into") {
    Backed kitchen;
    const auto sound = kitchen.archive;
    kitchen.archive = kitchen.folder / "new/home/thawslip/archive.db";
    CHECK(kitchen("archive restore missing.db").status == 1);
    CHECK_FALSE(fs::exists(kitchen.folder / "new"));
    const auto folder = kitchen("archive restore .");
    CHECK(folder.status == 1);
    CHECK(says(folder.err, ". is a folder, and no backup"));
    const auto restored = kitchen("archive restore backup.db");
    CAPTURE(restored.err);
    CHECK(restored.status == 0);
    CHECK(restored.err.empty());
    CHECK(fs::status(kitchen.folder / "new/home").permissions() == fs::perms::owner_all);
    CHECK(says(kitchen("freezer list").out, "ompote"));
}

TEST_CASE("each thing that is not as described is named, and put right where it can be") {
    Backed kitchen;
    const auto sound = kitchen.archive;
    enum class Repair { Whole, Named };
    const struct {
        std::string change;
        std::string told;
        Repair repair;
    } cases[] = {
        {"UPDATE package SET made = '2026-10-01' WHERE id = 1", "was made 2026-10-01 in",
         Repair::Whole},
        {"UPDATE day SET made = '2026-10-01'", "is of 2026-10-01 in the archive", Repair::Whole},
        {"UPDATE package SET keep_until = '2031-05-05' WHERE id = 1", "keeps until 2031-05-05 in",
         Repair::Whole},
        {"UPDATE package SET grams = 9000 WHERE id = 1", "weighs 9000 g in", Repair::Whole},
        {"UPDATE package SET thaw = 'microwave' WHERE id = 1", "thaws: microwave in",
         Repair::Whole},
        {"UPDATE package SET thaw_minutes = 2 WHERE id = 1", "thaws in 2 min in", Repair::Whole},
        {"UPDATE package SET classes = 'x' WHERE id = 1", "kinds of food or a thaw method",
         Repair::Whole},
        {"UPDATE package SET words = 'gravel'; INSERT INTO dish_words (dish_words) VALUES "
         "('rebuild')",
         "is found by \"gravel\" in", Repair::Whole},
        {"UPDATE bag SET state = 'eaten' WHERE id = 1", "is listed as eaten since", Repair::Whole},
        {"UPDATE bag_id SET id = 'AAA-AAA-AAA' WHERE bag = 1", "the id \"AAA-AAA-AAA\", which",
         Repair::Whole},
        {"DELETE FROM bag_id WHERE bag = 1", "has no id", Repair::Whole},
        {"DROP INDEX bag_package; UPDATE package SET servings = 9 WHERE id = 1",
         "the index \"bag_package\" is missing", Repair::Whole},
        {"DELETE FROM bag_event WHERE bag = 1", "has a state or a time that cannot be",
         Repair::Named},
        {"UPDATE bag_event SET ordered = 9223372036854775807 WHERE bag = 1",
         "has a state or a time that cannot be", Repair::Named},
        {"UPDATE bag_event SET at = char(27) || '[31m' WHERE bag = 1; UPDATE bag SET changed = "
         "char(27) || '[31m' WHERE id = 1",
         "has a state or a time", Repair::Named},
        {"UPDATE day SET revision = -1", "cannot be", Repair::Named},
        {"UPDATE package SET batch = -5 WHERE id = 1", "is of a batch that cannot be",
         Repair::Named},
        {"UPDATE package SET origin = char(27) WHERE id = 1", "is of a batch that cannot be",
         Repair::Named},
        {"UPDATE day SET ordered = -1", "at a time that cannot be", Repair::Named},
    };
    for (const auto& c : cases) {
        CAPTURE(c.change);
        kitchen.archive = kitchen.folder / "rotten.db";
        fs::copy_file(kitchen.folder / "backup.db", kitchen.archive,
                      fs::copy_options::overwrite_existing);
        kitchen.sql(c.change);
        const auto checked = kitchen("archive check");
        CAPTURE(checked.err);
        CHECK(checked.status == 3);
        CHECK(says(checked.err, c.told));
        const auto list = kitchen("freezer list").out;
        const auto repaired = kitchen("archive repair");
        CAPTURE(repaired.out);
        CAPTURE(repaired.err);
        CHECK((repaired.status == 0) == (c.repair == Repair::Whole));
        CHECK((kitchen("archive check").status == 0) == (c.repair == Repair::Whole));
        if (c.repair == Repair::Whole) {
            const auto right = kitchen("freezer list --all").out;
            kitchen.archive = sound;
            CHECK(right == kitchen("freezer list --all").out);
        }
        fs::remove(kitchen.folder / "rotten.db-wal");
        fs::remove(kitchen.folder / "rotten.db-shm");
    }
    kitchen.archive = sound;
}

TEST_CASE("a merge takes nothing that its own descriptions do not say, and no time beyond all") {
    const Backed kitchen;
    for (const std::string change :
         {"UPDATE package SET allergens = ''", "UPDATE package SET keep_until = '2031-05-05'",
          "UPDATE bag_event SET ordered = 9223372036854775807",
          "UPDATE bag_event SET clock = -9223372036854775807",
          "UPDATE bag_event SET clock_offset = 9223372036854775807",
          "UPDATE bag_event SET seq = 9223372036854775807",
          "UPDATE bag_event SET uptime = 9223372036854775807",
          "UPDATE day SET ordered = 9223372036854775807"}) {
        CAPTURE(change);
        fs::copy_file(kitchen.folder / "backup.db", kitchen.folder / "other.db",
                      fs::copy_options::overwrite_existing);
        run("sqlite3 " + shell_word(kitchen.folder / "other.db") + " " + shell_word(change));
        const auto before = kitchen.sql(".dump");
        const auto outcome = kitchen("archive merge other.db");
        CHECK(outcome.status == 1);
        CHECK(says(outcome.err, "error: "));
        CHECK(kitchen.sql(".dump") == before);
    }
}

TEST_CASE("a state that did not take is not told as done") {
    const Backed kitchen;
    const auto id = kitchen.first_id("squash");
    kitchen.sql("UPDATE bag_event SET ordered = 9223372036854775807");
    const auto outcome = kitchen("freezer eaten " + id);
    CHECK(outcome.status == 1);
    CHECK(outcome.out.empty());
    CHECK(says(outcome.err, "error: " + id));
    CHECK(says(outcome.err, "is still noted as frozen"));
    CHECK(says(kitchen("freezer list").out, id));
}

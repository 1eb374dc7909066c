// An archive of an older schema is migrated, all or nothing.

#include "archive/archive.h"
#include "kitchen.h"
#include "support/skip.h"
#include "traced.h"
#include "unit/archive/schema_1.h"
#include "unit/archive/schema_2.h"
#include "unit/archive/schema_3.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <vector>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

constexpr const char* newest = "6\n";

struct OldKitchen : Kitchen {
    std::string old = folder / "old.db";

    explicit OldKitchen(std::string_view sql = schema_1_archive) {
        write_file(folder / "old.sql", std::string{sql});
        REQUIRE(
            run("sqlite3 " + shell_word(old) + " < " + shell_word(folder / "old.sql")).err.empty());
        put_old_archive();
    }
    void put_old_archive() const {
        for (const char* beside : {"", "-wal", "-shm"}) {
            fs::remove(archive + beside);
        }
        fs::copy_file(old, archive);
    }
    std::string version() const { return sql("PRAGMA user_version"); }
};

struct LaterKitchen : OldKitchen {
    LaterKitchen() : OldKitchen{schema_2_archive} {}
};

struct ThirdKitchen : OldKitchen {
    ThirdKitchen() : OldKitchen{schema_3_archive} {}
};

archive::Contents contents_of(const std::string& path) {
    auto archive = archive::Archive::open(path, archive::Mode::Read);
    REQUIRE(archive.ok());
    return std::move(archive).value().contents();
}

/// Tables and their columns, indexes and the rest, whatever the spelling of their definition.
constexpr const char* shape =
    "SELECT m.type, m.name, p.name, p.type, p.\"notnull\", p.pk FROM sqlite_schema m LEFT JOIN "
    "pragma_table_info(m.name) p ORDER BY m.name, p.cid";

} // namespace

TEST_CASE_FIXTURE(OldKitchen, "an archive of schema 1 is read, and migrated with all it holds") {
    const auto dump = "SELECT id, lineage, revision, made, kitchen, file, recorded, hash, "
                      "description FROM day; SELECT id, package, number, state, changed FROM bag; "
                      "SELECT * FROM bag_id; SELECT * FROM "
                      "print; SELECT * FROM print_day; SELECT id, day, position, dish, words, "
                      "made, keep_until, basis, servings, grams, bags FROM package";
    const auto before = sql(dump);
    REQUIRE(before.size() > 500);
    const auto list = (*this)("freezer list --all");
    CAPTURE(list.err);
    CHECK(list.status == 0);
    CHECK(says(list.out, "SW3-HY0-87T"));
    CHECK(version() == newest);
    CHECK(sql(dump) == before);
    const auto contents = contents_of(archive);
    CHECK(contents.days.size() == 2);
    CHECK(contents.days[0].record.description == "# first");
    CHECK_FALSE(contents.days[0].record.packages[0].food.has_value());
    CHECK_FALSE(contents.days[0].record.packages[0].thaw.has_value());
    CHECK(contents.bags.size() == 2);
    CHECK(contents.prints.size() == 2);
    CHECK((*this)("freezer find squ --all").out == list.out);
    // The shape is that of a new archive.
    const auto led_forward = sql(shape);
    fs::remove(archive);
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    CHECK(sql(shape) == led_forward);
}

TEST_CASE_FIXTURE(OldKitchen,
                  "a migration killed before any of its steps leaves 1 or the newest, whole") {
    if (!can_trace()) {
        return skip("this system lets no program be traced");
    }
    const std::vector<std::string> list = {THAWSLIP_PROGRAM, "--archive", archive, "freezer",
                                           "list"};
    const auto steps = run_traced(list, folder.path()).steps.size();
    const auto expected = contents_of(archive);
    REQUIRE(steps > 5);
    bool led_forward = false;
    for (std::size_t step = 0; step < steps; ++step) {
        CAPTURE(step);
        put_old_archive();
        REQUIRE(run_traced(list, folder.path(), step).was_killed);
        CHECK(sql("PRAGMA integrity_check; PRAGMA foreign_key_check") == "ok\n");
        const auto left = version();
        REQUIRE((left == "1\n" || left == newest));
        CHECK((left == newest || !led_forward));
        led_forward = left == newest;
        const auto columns = sql("SELECT count(*) FROM pragma_table_info('package')");
        CHECK(columns == (led_forward ? "21\n" : "11\n"));
        CHECK(contents_of(archive) == expected); // by now migrated by reading it
    }
}

TEST_CASE_FIXTURE(LaterKitchen, "all that schema 2 has is known after it is migrated") {
    const auto printed_ids = sql("SELECT id FROM bag_id ORDER BY id");
    REQUIRE(std::ranges::count(printed_ids, '\n') == 9);
    const auto states = sql("SELECT id, state, changed FROM bag ORDER BY id");
    REQUIRE((*this)("freezer list --all").status == 0);
    CHECK(version() == newest);
    CHECK(sql("SELECT id FROM bag_id ORDER BY id") == printed_ids);
    CHECK(sql("SELECT id, state, changed FROM bag ORDER BY id") == states);
    CHECK(sql("SELECT bag, state, at FROM bag_event ORDER BY bag") == states);
    CHECK(sql("SELECT count(*) FROM print_key") == "4\n");
    CHECK(sql("SELECT lineage, revision, ordered FROM day ORDER BY ordered") ==
          "1|1|1792245900000\n2|1|1792332300000\n1|2|1792418700000\n");
    CHECK((*this)("archive check").status == 0);
    for (const std::string id : {"AKM-124-87M", "0RR-6X4-87B", "T10-WKR-87W", "F99-KZC-88T"}) {
        CAPTURE(id);
        CHECK((*this)("reprint " + id + " -o one.pdf").status == 0);
        CHECK(says(run("pdftotext " + shell_word(folder / "one.pdf") + " -").out, id));
        CHECK((*this)("read " + id).status == 0);
    }
}

TEST_CASE_FIXTURE(ThirdKitchen, "all that schema 3 has is known after it is led forward") {
    const auto dump = "SELECT id, package, number, state, changed FROM bag; SELECT * FROM bag_id; "
                      "SELECT bag, ordered, station, seq, state, at, clock, clock_offset, boot, "
                      "uptime FROM bag_event; SELECT * FROM print; SELECT * FROM print_day; SELECT "
                      "* FROM print_key; SELECT id, hash, ordered FROM day";
    const auto before = sql(dump);
    REQUIRE(before.size() > 1000);
    const auto list = (*this)("freezer list --all");
    CHECK(list.status == 0);
    CHECK(version() == newest);
    CHECK(sql(dump) == before);
    CHECK((*this)("archive check").status == 0);
    CHECK(says(list.out, "eaten since 2026-10-20"));
    CHECK(says(list.out, "discarded since 2026-10-20"));
    CHECK(says(list.out, "out since 2026-10-20"));
    CHECK((*this)("read RAN-BEW-877").status == 0);
    CHECK((*this)("reprint J1R-A6W-877 -o one.pdf").status == 0);
    // Its states can be what there was no word for.
    CHECK((*this)("freezer back F8W-AX8-87S").status == 0);
    sql("UPDATE bag SET state = 'never filled' WHERE id = 4");
    CHECK(sql("SELECT state FROM bag WHERE id = 4") == "never filled\n");
    const auto made_anew = sql(shape);
    fs::remove(archive);
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    CHECK(sql(shape) == made_anew);
}

TEST_CASE_FIXTURE(LaterKitchen, "what schema 2 had printed is printed again, byte for byte") {
    // What the cook wrote, printed by today's program as the first batch of an unnamed kitchen.
    write_file(folder / "sunday.toml",
               sql("SELECT CAST(description AS TEXT) FROM day WHERE id = 2"));
    write_file(folder / "sheet.toml",
               sql("SELECT CAST(bytes AS TEXT) FROM print_file WHERE name LIKE '%my-sheet.toml'"));
    REQUIRE((*this)("reprint --printed 2026-10-18 -o again.pdf").status == 0);
    sql("UPDATE day SET file = '" + (folder / "sunday.toml") + "' WHERE id = 2");
    REQUIRE((*this)("labels sunday.toml --no-archive --stock sheet.toml --first-cell 3 -o new.pdf")
                .status == 0);
    CHECK(file("again.pdf") == file("new.pdf"));
    // The same file printed on has the ids it had; so has an edited one.
    write_file(folder / "sunday.toml", file("sunday.toml") + "# edited\n");
    REQUIRE((*this)("labels sunday.toml -o edited.pdf").status == 0);
    CHECK(sql("SELECT count(*) FROM bag") == "9\n");
    CHECK(says(run("pdftotext " + shell_word(folder / "edited.pdf") + " -").out, "Z59-BW8-881"));
}

TEST_CASE_FIXTURE(LaterKitchen, "a backup, and a merge of it, leave an older schema as it is") {
    const auto before = read_file(archive);
    CHECK((*this)("archive backup copy.db").status == 0);
    CHECK(read_file(archive) == before);
    CHECK(version() == "2\n");
    CHECK(run("sqlite3 " + shell_word(folder / "copy.db") + " 'PRAGMA user_version'").out == "2\n");
    const auto copy = read_file(folder / "copy.db");
    archive = folder / "new.db";
    const auto merged = (*this)("archive merge copy.db");
    CAPTURE(merged.err);
    CHECK(says(merged.out, "added 3 descriptions, 9 bags, 4 prints"));
    CHECK(read_file(folder / "copy.db") == copy);
    CHECK_FALSE(fs::exists(folder / "copy.db-wal"));
    CHECK_FALSE(fs::exists(folder / "copy.db-shm"));
    // Migrated on two ways, it is known to be the same.
    archive = folder / "old.db";
    REQUIRE((*this)("freezer list").status == 0);
    CHECK(says((*this)("archive merge new.db").out, "added 0 descriptions, 0 bags, 0 prints; 0"));
}

TEST_CASE_FIXTURE(OldKitchen, "several programs find the old schema at once, and one leads it") {
    const auto outcomes = at_once(std::vector<std::string>(6, "freezer list --all"));
    for (const auto& outcome : outcomes) {
        CAPTURE(outcome.err);
        CHECK(outcome.status == 0);
        CHECK(outcome.out == outcomes.front().out);
    }
    CHECK(version() == newest);
}

TEST_CASE_FIXTURE(OldKitchen, "a later schema is refused by every command, untouched") {
    sql("PRAGMA user_version = 99; PRAGMA wal_checkpoint(TRUNCATE)");
    const auto before = read_file(archive);
    for (const std::string command :
         {"labels day.toml -o labels.pdf", "freezer list", "freezer eaten SW3-HY0-87T",
          "reprint squash -o again.pdf", "archive check", "archive export out",
          "archive backup copy.db"}) {
        CAPTURE(command);
        const auto refused = (*this)(command);
        CHECK(refused.status == 3);
        CHECK(says(refused.err, "was written by a later thawslip"));
        CHECK(read_file(archive) == before);
    }
    CHECK_FALSE(fs::exists(folder / "again.pdf"));
    CHECK_FALSE(fs::exists(folder / "out"));
    CHECK_FALSE(fs::exists(folder / "copy.db"));
}

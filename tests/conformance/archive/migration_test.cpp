// An archive of an older schema is led forward, all or nothing.

#include "archive/archive.h"
#include "kitchen.h"
#include "traced.h"
#include "unit/archive/schema_1.h"

#include <doctest/doctest.h>
#include <thread>
#include <vector>

using namespace thawslip;
using namespace thawslip::test_support;
namespace fs = std::filesystem;

namespace {

struct OldKitchen : Kitchen {
    std::string old = folder / "schema-1.db";

    OldKitchen() {
        write_file(folder / "schema-1.sql", std::string{schema_1_archive});
        REQUIRE(run("sqlite3 " + shell_word(old) + " < " + shell_word(folder / "schema-1.sql"))
                    .err.empty());
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

TEST_CASE_FIXTURE(OldKitchen, "an archive of schema 1 is read, and led forward with all it holds") {
    const auto dump = "SELECT * FROM day; SELECT * FROM bag; SELECT * FROM bag_id; SELECT * FROM "
                      "print; SELECT * FROM print_day; SELECT id, day, position, dish, words, "
                      "made, keep_until, basis, servings, grams, bags FROM package";
    const auto before = sql(dump);
    REQUIRE(before.size() > 500);
    const auto list = (*this)("freezer list --all");
    CAPTURE(list.err);
    CHECK(list.status == 0);
    CHECK(says(list.out, "SW3-HY0-87T"));
    CHECK(version() == "2\n");
    CHECK(sql(dump) == before);
    const auto contents = contents_of(archive);
    CHECK(contents.days.size() == 2);
    CHECK(contents.days[0].record.description == "# first");
    CHECK_FALSE(contents.days[0].record.packages[0].food.has_value());
    CHECK(contents.bags.size() == 2);
    CHECK(contents.prints.size() == 2);
    CHECK((*this)("freezer find squ --all").out == list.out);
    // The shape is that of a new archive.
    const auto led_forward = sql(shape);
    fs::remove(archive);
    REQUIRE((*this)("labels day.toml -o labels.pdf").status == 0);
    CHECK(sql(shape) == led_forward);
}

TEST_CASE_FIXTURE(OldKitchen, "a migration killed before any of its steps leaves 1 or 2, whole") {
    if (!can_trace()) {
        MESSAGE("this system lets no program be traced");
        return;
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
        REQUIRE((left == "1\n" || left == "2\n"));
        CHECK((left == "2\n" || !led_forward));
        led_forward = left == "2\n";
        const auto columns = sql("SELECT count(*) FROM pragma_table_info('package')");
        CHECK(columns == (led_forward ? "13\n" : "11\n"));
        CHECK(contents_of(archive) == expected); // by now led forward by reading it
    }
}

TEST_CASE_FIXTURE(OldKitchen, "several programs find the old schema at once, and one leads it") {
    std::vector<Outcome> outcomes(6);
    std::vector<std::thread> threads;
    for (auto& outcome : outcomes) {
        threads.emplace_back([this, &outcome] { outcome = (*this)("freezer list --all"); });
    }
    for (auto& thread : threads) {
        thread.join();
    }
    for (const auto& outcome : outcomes) {
        CAPTURE(outcome.err);
        CHECK(outcome.status == 0);
        CHECK(outcome.out == outcomes.front().out);
    }
    CHECK(version() == "2\n");
}

TEST_CASE_FIXTURE(OldKitchen, "a later schema is refused by every command, untouched") {
    sql("PRAGMA user_version = 3; PRAGMA wal_checkpoint(TRUNCATE)");
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

#include "archive/tables/rows.h"

#include "archive/events.h"
#include "archive/limits.h"
#include "archive/tables/columns.h"
#include "base/list.h"
#include "kitchen/bag_id.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::archive {
namespace {

/// SQLite's integers are signed; the bits are what counts.
std::int64_t hash_of(std::string_view bytes) {
    return static_cast<std::int64_t>(kitchen::fnv_1a(bytes));
}

std::int64_t hash_of(const PrintSetup& setup, const std::vector<std::int64_t>& days) {
    auto identity = fmt::format("{}\x1F{}\x1F{}\x1F{}\x1F{}", setup.what, setup.stock, setup.layout,
                                setup.settings, setup.look);
    for (const auto day : days) {
        identity += fmt::format("\x1F{}", day);
    }
    return hash_of(identity);
}

std::vector<std::int64_t> days_of_print(Connection& connection, std::int64_t print) {
    auto& rows = connection.statement("SELECT day FROM print_day WHERE print = ? ORDER BY position")
                     .with(print);
    std::vector<std::int64_t> days;
    while (rows.next()) {
        days.push_back(rows.integer(0));
    }
    return days;
}

// Literals, so that the same question is the same statement.
#define THAWSLIP_LAST_DAY "SELECT coalesce(max(id), 0) FROM day"
#define THAWSLIP_LAST_PACKAGE "SELECT coalesce(max(id), 0) FROM package"
#define THAWSLIP_LAST_BAG "SELECT coalesce(max(id), 0) FROM bag"
#define THAWSLIP_LAST_PRINT "SELECT coalesce(max(id), 0) FROM print"
#define THAWSLIP_LAST_LINEAGE "SELECT coalesce(max(lineage), 0) + 1 FROM day"
#define THAWSLIP_ANY_PRINT "SELECT 1 FROM print LIMIT 1"

/// \returns its row
std::int64_t insert_package(Connection& connection, std::int64_t day, int position,
                            const PackageRecord& package, std::size_t bags) {
    const auto row = connection.next_row(THAWSLIP_LAST_PACKAGE);
    auto& statement =
        connection
            .statement(
                "INSERT INTO package (id, day, position, dish, words, made, keep_until, basis, "
                "servings, bags, kitchen_number, batch_kitchen, batch, size, origin, grams, "
                "allergens, classes, thaw, thaw_minutes, place) VALUES (?, ?, ?, ?, ?, ?, ?, "
                "?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
            .with(row)
            .with(day)
            .with(position)
            .with(package.dish)
            .with(package.words)
            .with(kitchen::to_iso(package.made))
            .with(kitchen::to_iso(package.keep_until))
            .with(word_of(package.basis))
            .with(package.servings)
            .with(static_cast<std::int64_t>(bags))
            .with(package.batch.kitchen_number)
            .with(package.batch.kitchen)
            .with(package.batch.number)
            .with(package.batch.size)
            .with(package.origin);
    with_optional(statement, package).run();
    if (connection.is_file()) {
        connection.statement("INSERT INTO dish_words (rowid, words) VALUES (?, ?)")
            .with(row)
            .with(package.words)
            .run();
    }
    return row;
}

} // namespace

void ask_rows_ahead(Connection& connection) {
    for (const std::string_view last :
         {THAWSLIP_LAST_DAY, THAWSLIP_LAST_PACKAGE, THAWSLIP_LAST_BAG, THAWSLIP_LAST_PRINT,
          THAWSLIP_LAST_LINEAGE, THAWSLIP_ANY_PRINT}) {
        connection.statement(last).ahead();
    }
}

bool holds_no_print(Connection& connection) {
    return !connection.statement(THAWSLIP_ANY_PRINT).next();
}

std::int64_t hash_of_description(std::string_view description) {
    return hash_of(description);
}

std::int64_t order_after(std::int64_t last, const std::string& recorded) {
    return std::min(std::max(seconds_of(recorded) * 1000, std::min(last, Most::ordered) + 1),
                    Most::ordered);
}

std::int64_t last_order(Connection& connection, int lineage) {
    auto& row = connection.statement("SELECT coalesce(max(ordered), 0) FROM day WHERE lineage = ?")
                    .with(lineage);
    row.next();
    return row.integer(0);
}

std::int64_t newest_revision(Connection& connection, int lineage) {
    auto& row = connection
                    .statement("SELECT id FROM day WHERE lineage = ? ORDER BY revision DESC "
                               "LIMIT 1")
                    .with(lineage);
    return row.next() ? row.integer(0) : 0;
}

void number_revisions(Connection& connection, int lineage) {
    connection.statement("UPDATE day SET revision = -revision WHERE lineage = ?")
        .with(lineage)
        .run();
    connection
        .statement("UPDATE day SET revision = r.revision FROM (SELECT id, row_number() OVER (ORDER "
                   "BY ordered, hash, id) AS revision FROM day WHERE lineage = ?1) AS r WHERE "
                   "day.id = r.id")
        .with(lineage)
        .run();
}

NewDay insert_day(Connection& connection, const DayRecord& day, int lineage, int revision,
                  const std::string& recorded, std::int64_t ordered) {
    NewDay added{connection.next_row(THAWSLIP_LAST_DAY), {}};
    connection
        .statement("INSERT INTO day (id, lineage, revision, made, kitchen, file, recorded, hash, "
                   "description, station, ordered) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)")
        .with(added.row)
        .with(lineage)
        .with(revision)
        .with(kitchen::to_iso(day.made))
        .with(day.kitchen)
        .with(day.file)
        .with(recorded)
        .with(hash_of_description(day.description))
        .with_bytes(day.description)
        .with(day.station)
        .with(ordered)
        .run();
    int position = 0;
    for (const auto& package : day.packages) {
        added.packages.push_back(
            insert_package(connection, added.row, ++position, package, package.bags.size()));
    }
    return added;
}

namespace {

Statement& packages_question(Connection& connection, std::int64_t day) {
    return connection
        .statement("SELECT dish, words, made, keep_until, basis, servings, grams, allergens, "
                   "classes, thaw, thaw_minutes, place, bags, kitchen_number, batch_kitchen, "
                   "batch, size, origin FROM package WHERE day = ? ORDER BY position")
        .with(day);
}

Statement& package_question(Connection& connection, std::int64_t bag) {
    return connection
        .statement("SELECT dish, words, made, keep_until, basis, servings, grams, allergens, "
                   "classes, thaw, thaw_minutes, place, kitchen_number, batch_kitchen, batch, "
                   "size, origin FROM package WHERE id = (SELECT package FROM bag WHERE id = ?)")
        .with(bag);
}

Statement& files_question(Connection& connection, std::int64_t print) {
    return connection.statement("SELECT name, bytes FROM print_file WHERE print = ? ORDER BY id")
        .with(print);
}

} // namespace

void ask_packages_ahead(Connection& connection, std::int64_t day) {
    packages_question(connection, day).ahead();
}

void ask_package_ahead(Connection& connection, std::int64_t bag) {
    package_question(connection, bag).ahead();
}

void ask_files_ahead(Connection& connection, std::int64_t print) {
    files_question(connection, print).ahead();
}

std::vector<PackageRecord> packages_of(Connection& connection, std::int64_t day) {
    auto& rows = packages_question(connection, day);
    std::vector<PackageRecord> packages;
    while (rows.next()) {
        packages.push_back(package_at(rows, 0));
        // One more than there can be is enough to know that it cannot be.
        packages.back().bags.resize(static_cast<std::size_t>(
            std::clamp<std::int64_t>(rows.integer(12), 0, Most::bags + 1)));
        packages.back().batch = batch_at(rows, 13);
        packages.back().origin = rows.text(17);
    }
    return packages;
}

std::vector<std::int64_t> package_rows(Connection& connection, std::int64_t day) {
    auto& rows =
        connection.statement("SELECT id FROM package WHERE day = ? ORDER BY position").with(day);
    std::vector<std::int64_t> packages;
    while (rows.next()) {
        packages.push_back(rows.integer(0));
    }
    return packages;
}

std::int64_t bag_row(Connection& connection, const std::string& id) {
    auto& row = connection.statement("SELECT bag FROM bag_id WHERE id = ?").with(id);
    return row.next() ? row.integer(0) : 0;
}

IdRows bag_rows(Connection& connection, std::span<const std::string> ids, When when) {
    constexpr std::size_t at_once = 32; // as many as the statement has places
    IdRows found;
    for (const auto& id : ids) {
        found.emplace(id, 0);
    }
    const auto question = [&](std::size_t start) -> Statement& {
        auto& rows = connection.statement("SELECT id, bag FROM bag_id WHERE id IN (?, ?, ?, ?, ?, "
                                          "?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, "
                                          "?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)");
        for (std::size_t i = start; i < start + at_once; ++i) {
            rows.with(i < ids.size() ? std::string_view{ids[i]} : std::string_view{});
        }
        return rows;
    };
    for (std::size_t start = 0; start < ids.size(); start += at_once) {
        question(start).ahead();
    }
    for (std::size_t start = 0; start < ids.size() && when == When::Now; start += at_once) {
        auto& rows = question(start);
        while (rows.next()) {
            found[rows.text(0)] = rows.integer(1);
        }
    }
    return found;
}

std::int64_t living_bag(Connection& connection, const std::string& id) {
    constexpr int most_names = 100;
    auto bag = bag_row(connection, id);
    for (int step = 0; bag != 0 && step < most_names; ++step) {
        auto& row = connection
                        .statement("SELECT bag FROM bag_id WHERE id = (SELECT joined FROM bag "
                                   "WHERE id = ? AND state = 'renamed')")
                        .with(bag);
        if (!row.next()) {
            return bag;
        }
        bag = row.integer(0);
    }
    return bag;
}

int lineage_of_bag(Connection& connection, std::int64_t bag) {
    auto& row = connection
                    .statement("SELECT d.lineage FROM bag b JOIN package p ON p.id = b.package "
                               "JOIN day d ON d.id = p.day WHERE b.id = ?")
                    .with(bag);
    return row.next() ? static_cast<int>(row.integer(0)) : 0;
}

int lineage_of_day(Connection& connection, std::int64_t day) {
    auto& row = connection.statement("SELECT lineage FROM day WHERE id = ?").with(day);
    return row.next() ? static_cast<int>(row.integer(0)) : 0;
}

PackageRecord package_of_bag(Connection& connection, std::int64_t bag) {
    auto& row = package_question(connection, bag);
    if (!row.next()) {
        return {};
    }
    auto package = package_at(row, 0);
    package.batch = batch_at(row, 12);
    package.origin = row.text(16);
    return package;
}

std::int64_t insert_bag(Connection& connection, std::int64_t package, int number, State state,
                        const std::string& changed, const std::optional<std::string>& place) {
    const auto row = connection.next_row(THAWSLIP_LAST_BAG);
    auto& insert = connection
                       .statement("INSERT INTO bag (id, package, number, state, changed, place) "
                                  "VALUES (?, ?, ?, ?, ?, ?)")
                       .with(row)
                       .with(package)
                       .with(number)
                       .with(word_of(state))
                       .with(changed);
    (place ? insert.with(*place) : insert.with_nothing()).run();
    return row;
}

void insert_id(Connection& connection, const std::string& id, std::int64_t bag, bool newest) {
    connection.statement("INSERT INTO bag_id (id, bag, newest) VALUES (?, ?, ?)")
        .with(id)
        .with(bag)
        .with(newest ? 1 : 0)
        .run();
}

void make_newest(Connection& connection, std::int64_t bag, const std::string& id) {
    connection
        .statement("UPDATE bag_id SET newest = CASE WHEN id = ? THEN 1 ELSE 0 END WHERE bag = ?")
        .with(id)
        .with(bag)
        .run();
}

void describe_bag(Connection& connection, std::int64_t bag, std::int64_t package, int number) {
    connection.statement("UPDATE bag SET package = ?, number = ? WHERE id = ?")
        .with(package)
        .with(number)
        .with(bag)
        .run();
}

int next_lineage(Connection& connection) {
    auto& row = connection.statement(THAWSLIP_LAST_LINEAGE);
    row.next();
    return static_cast<int>(row.integer(0));
}

int last_revision(Connection& connection, int lineage) {
    auto& row = connection.statement("SELECT coalesce(max(revision), 0) FROM day WHERE lineage = ?")
                    .with(lineage);
    row.next();
    return static_cast<int>(row.integer(0));
}

std::int64_t print_row(Connection& connection, const PrintSetup& setup,
                       const std::vector<std::int64_t>& days) {
    auto& rows = connection
                     .statement("SELECT id FROM print WHERE hash = ? AND what = ? AND stock = ? "
                                "AND layout = ? AND settings = ? AND look = ?")
                     .with(hash_of(setup, days))
                     .with(setup.what)
                     .with(setup.stock)
                     .with(setup.layout)
                     .with(setup.settings)
                     .with(setup.look);
    while (rows.next()) {
        if (days_of_print(connection, rows.integer(0)) == days) {
            return rows.integer(0);
        }
    }
    return 0;
}

std::vector<SetupFile> files_of_print(Connection& connection, std::int64_t print) {
    auto& rows = files_question(connection, print);
    std::vector<SetupFile> files;
    while (rows.next()) {
        files.push_back({rows.text(0), rows.text(1)});
    }
    return files;
}

std::int64_t insert_print(Connection& connection, const StoredPrint& print) {
    const auto days = mapped(print.days, [](DayKey day) { return static_cast<std::int64_t>(day); });
    const auto& setup = print.setup;
    const auto row = connection.next_row(THAWSLIP_LAST_PRINT);
    connection
        .statement("INSERT INTO print (id, first_at, last_at, what, stock, layout, settings, look, "
                   "hash) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?)")
        .with(row)
        .with(print.first_at)
        .with(print.last_at)
        .with(setup.what)
        .with(setup.stock)
        .with(setup.layout)
        .with(setup.settings)
        .with(setup.look)
        .with(hash_of(setup, days))
        .run();
    for (const auto& file : setup.files) {
        connection.statement("INSERT INTO print_file (id, print, name, bytes) VALUES (?, ?, ?, ?)")
            .with(connection.next_row("SELECT coalesce(max(id), 0) FROM print_file"))
            .with(row)
            .with(file.name)
            .with_bytes(file.text)
            .run();
    }
    for (std::size_t i = 0; i < days.size(); ++i) {
        connection.statement("INSERT INTO print_day (print, position, day) VALUES (?, ?, ?)")
            .with(row)
            .with(static_cast<std::int64_t>(i + 1))
            .with(days[i])
            .run();
    }
    return row;
}

namespace {

Statement& print_key_question(Connection& connection, const std::string& key) {
    return connection.statement("SELECT 1 FROM print_key WHERE key = ?").with(key);
}

} // namespace

bool has_print_key(Connection& connection, const std::string& key) {
    return print_key_question(connection, key).next();
}

void ask_print_key_ahead(Connection& connection, const std::string& key) {
    print_key_question(connection, key).ahead();
}

void insert_print_key(Connection& connection, std::int64_t print, const std::string& key,
                      const std::string& at, const std::string& station) {
    connection
        .statement("INSERT INTO print_key (key, print, at, station) VALUES (?, ?, ?, ?) ON "
                   "CONFLICT DO NOTHING")
        .with(key)
        .with(print)
        .with(at)
        .with(station)
        .run();
}

} // namespace thawslip::archive

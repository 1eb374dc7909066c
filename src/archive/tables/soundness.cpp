#include "archive/tables/soundness.h"

#include "archive/contents.h"
#include "archive/copy.h"
#include "archive/limits.h"
#include "archive/tables/columns.h"
#include "archive/tables/rows.h"
#include "archive/tables/schema.h"
#include "base/shown.h"

#include <algorithm>
#include <fmt/format.h>
#include <iterator>
#include <map>
#include <regex>

namespace thawslip::archive {
namespace {

/// What stands in a schema, by kind and name: its SQL.
using Parts = std::map<std::pair<std::string, std::string>, std::string>;

/// The tables that FTS5 keeps its index in: their SQL is SQLite's business.
bool is_inside_index(const std::string& name) {
    return name.starts_with("dish_words_");
}

/// SQL as it is compared: what it does not say, remarks and white space, is left out.
std::string in_short(const std::string& sql) {
    std::string words;
    for (std::size_t at = 0; at < sql.size(); ++at) {
        if (sql.compare(at, 2, "--") == 0) {
            at = std::min(sql.find('\n', at), sql.size() - 1);
        }
        const bool space = sql[at] == ' ' || sql[at] == '\n';
        const bool again = words.empty() || words.back() == ' ';
        if (!space) {
            words += sql[at];
        } else if (!again) {
            words += ' ';
        }
    }
    return std::regex_replace(words, std::regex{" ?([(),]) ?"}, "$1");
}

Parts parts_of(const Database& database) {
    Parts parts;
    auto rows = database.prepare("SELECT type, name, coalesce(sql, '') FROM sqlite_schema");
    while (rows.next()) {
        const auto name = rows.text(1);
        if (!name.starts_with("sqlite_")) { // indexes of keys, statistics
            parts[{rows.text(0), name}] = is_inside_index(name) ? "" : in_short(rows.text(2));
        }
    }
    return parts;
}

Parts parts_of_steps(std::size_t version) {
    const auto fresh = Database::in_memory("", std::chrono::milliseconds{0});
    migrate(fresh, schema_steps().first(version));
    return parts_of(fresh);
}

/// The SQL of our indexes that are not there; without one, what is kept is only slower to find.
std::vector<std::string> missing_indexes(const Database& database) {
    const auto fresh = Database::in_memory("", std::chrono::milliseconds{0});
    migrate(fresh, schema_steps().first(schema_version(database, schema_steps().size())));
    const auto here = parts_of(database);
    std::vector<std::string> missing;
    auto rows = fresh.prepare(
        "SELECT name, sql FROM sqlite_schema WHERE type = 'index' AND sql IS NOT NULL");
    while (rows.next()) {
        if (!here.contains({"index", rows.text(0)})) {
            missing.push_back(rows.text(1));
        }
    }
    return missing;
}

std::string name_of(const Parts::value_type& part) {
    return fmt::format("the {} \"{}\"", part.first.first, shown(part.first.second));
}

void append(std::vector<std::string>& wrong, std::vector<std::string> more) {
    std::ranges::move(more, std::back_inserter(wrong));
}

std::vector<std::string> faults_of_pages(const Database& database) {
    std::vector<std::string> wrong;
    auto integrity = database.prepare("PRAGMA integrity_check");
    while (integrity.next()) {
        if (integrity.text(0) != "ok") {
            wrong.push_back(shown(integrity.text(0)));
        }
    }
    return wrong;
}

/// Lists that are not one entry a line, and words that stand for nothing: reading them leaves
/// something out in silence.
std::vector<std::string> faults_of_text(Connection& connection) {
    std::vector<std::string> wrong;
    auto& packages =
        connection
            .statement("SELECT dish, made FROM package WHERE (allergens <> '' AND allergens NOT "
                       "LIKE '%' || ?1) OR (classes <> '' AND classes NOT LIKE '%' || ?1) OR "
                       "(allergens IS NULL) <> (classes IS NULL) OR thaw NOT IN ('refrigerator', "
                       "'cold water', 'microwave', 'from frozen')")
            .with("\n");
    while (packages.next()) {
        wrong.push_back(fmt::format("\"{}\" of {} has allergens, kinds of food or a thaw method "
                                    "that cannot be",
                                    shown(packages.text(0)), shown(packages.text(1))));
    }
    auto& events = connection.statement(
        "SELECT i.id FROM bag_event e JOIN bag_id i ON i.bag = e.bag AND i.newest = 1 WHERE "
        "e.state NOT IN ('', 'frozen', 'out', 'eaten', 'thrown', 'never filled', 'renamed')");
    while (events.next()) {
        wrong.push_back(fmt::format("bag {} has a state that cannot be", shown(events.text(0))));
    }
    return wrong;
}

/// References to rows that are not there, which a server does not let in.
std::vector<std::string> faults_of_keys(const Database& database) {
    std::vector<std::string> wrong;
    auto keys = database.prepare("PRAGMA foreign_key_check");
    while (keys.next()) {
        wrong.push_back(fmt::format("row {} of {} names a row of {} that is not there",
                                    keys.integer(1), keys.text(0), keys.text(2)));
    }
    return wrong;
}

std::vector<std::string> faults_of_ids(Connection& connection) {
    std::vector<std::string> wrong;
    auto& ids = connection.statement(
        "SELECT id FROM bag WHERE (SELECT count(*) FROM bag_id WHERE bag = bag.id AND newest = 1) "
        "<> 1");
    while (ids.next()) {
        wrong.push_back(fmt::format("bag {} has no id, or several", ids.integer(0)));
    }
    return wrong;
}

/// What no reading of pages shows, in archives of either engine, behind what is known to be wrong.
std::vector<std::string> faults_of_rows(Connection& connection, Contents& contents,
                                        std::vector<std::string> wrong) {
    append(wrong, faults_of_ids(connection));
    append(wrong, faults_of_descriptions(connection));
    append(wrong, faults_of_values(connection));
    append(wrong, faults_of_states(connection));
    append(wrong, faults_of_references(connection));
    if (wrong.empty()) { // else it may say the same again
        contents = contents_of(connection);
        append(wrong, faults_of_contents(contents));
    }
    return wrong;
}

} // namespace

std::vector<std::string> faults_in(Connection& connection) {
    Contents contents;
    return faults_in(connection, contents);
}

std::vector<std::string> faults_in(Connection& connection, Contents& contents) {
    if (!connection.is_file()) {
        return faults_of_rows(connection, contents, {});
    }
    const auto& database = connection.database();
    const WorkLimit limit{database};
    auto wrong = faults_of_schema(database);
    if (wrong.size() > missing_indexes(database).size()) {
        return wrong;
    }
    const auto pages = faults_of_pages(database);
    append(wrong, pages);
    if (!pages.empty()) { // what is read of broken pages is not worth a word
        return wrong;
    }
    auto more = faults_of_rows(connection, contents, faults_of_keys(database));
    append(more, faults_of_words(database));
    append(wrong, std::move(more));
    return wrong;
}
std::vector<std::string> faults_of_schema(const Database& database) {
    std::vector<std::string> wrong;
    const auto here = parts_of(database);
    const auto ours = parts_of_steps(schema_version(database, schema_steps().size()));
    for (const auto& part : here) {
        const auto known = ours.find(part.first);
        if (known == ours.end()) {
            wrong.push_back(name_of(part) + " is none that thawslip makes");
        } else if (known->second != part.second) {
            wrong.push_back(name_of(part) + " is not as thawslip makes it");
        }
    }
    for (const auto& part : ours) {
        if (!here.contains(part.first)) {
            wrong.push_back(name_of(part) + " is missing");
        }
    }
    return wrong;
}

std::vector<std::string> faults_of_descriptions(Connection& connection) {
    std::vector<std::string> wrong;
    auto& rows =
        connection.statement("SELECT hash, description, made, revision, file FROM day ORDER BY id");
    while (rows.next()) {
        if (hash_of_description(rows.text(1)) != rows.integer(0)) {
            wrong.push_back(fmt::format("the description of {} (revision {}, read from {}) is not "
                                        "what was recorded: its hash is another",
                                        shown(rows.text(2)), rows.integer(3), shown(rows.text(4))));
        }
    }
    return wrong;
}

std::vector<std::string> faults_of_values(Connection& connection) {
    std::vector<std::string> wrong;
    auto& days = connection.statement("SELECT id, made, kitchen FROM day ORDER BY id");
    while (days.next()) {
        if (const auto fault =
                fault_in(DayRecord{date_of(days.text(1)), days.text(2), {}, {}, {}})) {
            wrong.push_back(fmt::format("the description of {} {}", shown(days.text(1)), *fault));
        }
        for (const auto& package : packages_of(connection, days.integer(0))) {
            if (const auto fault = fault_in(package)) {
                wrong.push_back(fmt::format("\"{}\" of {} {}", named(package.dish),
                                            shown(days.text(1)), *fault));
            }
        }
    }
    append(wrong, faults_of_text(connection));
    return wrong;
}

int make_missing_indexes(const Database& database) {
    const auto missing = missing_indexes(database);
    for (const auto& sql : missing) {
        database.run(sql);
    }
    return static_cast<int>(missing.size());
}

std::vector<std::string> faults_of_states(Connection& connection) {
    std::vector<std::string> wrong;
    auto& bags = connection.statement(
        "WITH counts AS (SELECT * FROM bag_event e WHERE NOT EXISTS (SELECT 1 FROM bag_event u "
        "WHERE u.bag = e.bag AND u.undoes = e.seq AND u.station = e.station AND u.undoes <> 0)) "
        "SELECT i.id, b.state, b.changed, e.state, e.at FROM bag b JOIN bag_id i ON i.bag = b.id "
        "AND i.newest = 1 "
        "JOIN (SELECT bag, state, at, row_number() OVER (PARTITION BY bag ORDER BY ordered DESC, "
        "station DESC, seq DESC, state DESC, at DESC) AS turn FROM counts WHERE state <> '') e ON "
        "e.bag = b.id AND e.turn = 1 "
        // What it was renamed to may have been left out of a merge: then it stands for itself.
        "WHERE (b.state, b.changed) <> (e.state, e.at) AND e.state <> 'renamed'");
    while (bags.next()) {
        wrong.push_back(
            fmt::format("bag {} is listed as {} since {}, but what was last noted of it is {}, {}",
                        shown(bags.text(0)), shown(bags.text(1)), shown(bags.text(2)),
                        shown(bags.text(3)), shown(bags.text(4))));
    }
    return wrong;
}

std::vector<std::string> faults_of_contents(const Contents& contents) {
    auto fault = fault_in(contents);
    return fault ? std::vector<std::string>{*std::move(fault)} : std::vector<std::string>{};
}

std::vector<std::string> faults_of_words(const Database& database) {
    // A command to the index is a statement that writes, though nothing is written.
    const auto copy = copy_in_memory(database, std::chrono::milliseconds{0});
    try {
        // 1 as rank: held against the packages too, not against itself alone.
        copy.run("INSERT INTO dish_words (dish_words, rank) VALUES ('integrity-check', 1)");
    } catch (const ArchiveFailure& failure) {
        if (failure.fault().kind != ArchiveFault::Kind::Damaged) {
            throw;
        }
        return {"the index of words does not say what the dishes say"};
    }
    return {};
}

std::vector<std::string> faults_of_references(Connection& connection) {
    std::vector<std::string> wrong;
    auto& bags = connection.statement(
        "SELECT i.id FROM bag b JOIN package p ON p.id = b.package JOIN bag_id i ON i.bag = b.id "
        "AND i.newest = 1 WHERE b.number < 1 OR b.number > "
        "CAST(p.bags AS INTEGER)");
    while (bags.next()) {
        wrong.push_back(
            fmt::format("bag {} is beyond the number of bags of its dish", shown(bags.text(0))));
    }
    auto& prints = connection.statement(
        "SELECT first_at FROM print WHERE NOT EXISTS (SELECT 1 FROM print_day WHERE print = "
        "print.id)");
    while (prints.next()) {
        wrong.push_back(fmt::format("the print of {} is of no day", shown(prints.text(0))));
    }
    return wrong;
}

} // namespace thawslip::archive

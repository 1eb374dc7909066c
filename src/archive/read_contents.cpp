#include "archive/archive.h"
#include "archive/events.h"
#include "archive/part.h"
#include "archive/tables/columns.h"
#include "archive/tables/rows.h"

#include <algorithm>
#include <map>
#include <unordered_map>

namespace thawslip::archive {
namespace {

/// The ids of bags by their rows, the newest first.
using Ids = std::unordered_map<std::int64_t, std::vector<std::string>>;

Ids ids_in(Statement& rows) {
    Ids ids;
    while (rows.next()) {
        ids[rows.integer(0)].push_back(rows.text(1));
    }
    return ids;
}

/// Where each day's row stands in the contents.
using Indexes = std::map<std::int64_t, std::size_t>;

/// Its packages are for the caller.
void read_day(Connection& connection, const Statement& row, Indexes& indexes, Contents& contents) {
    indexes.emplace(row.integer(0), contents.days.size());
    contents.days.push_back(
        {static_cast<int>(row.integer(1)),
         static_cast<int>(row.integer(2)),
         row.text(6),
         row.integer(9),
         {date_of(row.text(3)), row.text(4), row.text(5), row.text(7), {}, row.text(8)}});
    ask_packages_ahead(connection, row.integer(0));
}

void read_packages(Connection& connection, const Indexes& indexes, Contents& contents) {
    for (const auto& [row, index] : indexes) {
        contents.days[index].record.packages = packages_of(connection, row);
    }
}

Indexes read_days(Connection& connection, Contents& contents) {
    Indexes indexes;
    auto& rows =
        connection.statement("SELECT id, lineage, revision, made, kitchen, file, recorded, "
                             "description, station, ordered FROM day ORDER BY lineage, revision");
    while (rows.next()) {
        read_day(connection, rows, indexes, contents);
    }
    read_packages(connection, indexes, contents);
    return indexes;
}

using Events = std::unordered_map<std::int64_t, std::vector<BagEvent>>;

void read_bag(const Statement& row, Ids& ids, Events& events, const Indexes& indexes,
              Contents& contents) {
    contents.bags.push_back({std::move(ids[row.integer(0)]), indexes.at(row.integer(1)),
                             static_cast<int>(row.integer(2)), static_cast<int>(row.integer(3)),
                             std::move(events[row.integer(0)])});
}

void read_bags(Connection& connection, const Indexes& indexes, Contents& contents) {
    auto ids =
        ids_in(connection.statement("SELECT bag, id FROM bag_id ORDER BY bag, newest DESC, id"));
    auto events = events_by_bag(connection);
    auto& rows = connection.statement(
        "SELECT b.id, p.day, p.position, b.number FROM bag b JOIN package p ON p.id = b.package "
        "ORDER BY p.day, p.position, b.number, b.id");
    while (rows.next()) {
        read_bag(rows, ids, events, indexes, contents);
    }
    std::ranges::stable_sort(contents.bags, {}, &Contents::Bag::day);
}

Statement& days_question(Connection& connection, std::int64_t print) {
    return connection.statement("SELECT day FROM print_day WHERE print = ? ORDER BY position")
        .with(print);
}

std::vector<std::size_t> days_of(Connection& connection, std::int64_t print,
                                 const Indexes& indexes) {
    auto& rows = days_question(connection, print);
    std::vector<std::size_t> days;
    while (rows.next()) {
        days.push_back(indexes.at(rows.integer(0)));
    }
    return days;
}

Statement& keys_question(Connection& connection, std::int64_t print) {
    return connection
        .statement("SELECT key, at, station FROM print_key WHERE print = ? ORDER BY key")
        .with(print);
}

std::vector<Contents::Key> keys_of(Connection& connection, std::int64_t print) {
    auto& rows = keys_question(connection, print);
    std::vector<Contents::Key> keys;
    while (rows.next()) {
        keys.push_back({rows.text(0), rows.text(1), rows.text(2)});
    }
    return keys;
}

/// Its files, days and keys are for the caller. \returns its row
std::int64_t read_print(Connection& connection, const Statement& row, Contents& contents) {
    contents.prints.push_back(
        {row.text(1),
         row.text(2),
         {row.text(3), row.text(4), row.text(5), row.text(6), row.text(7), {}},
         {},
         {}});
    ask_files_ahead(connection, row.integer(0));
    days_question(connection, row.integer(0)).ahead();
    keys_question(connection, row.integer(0)).ahead();
    return row.integer(0);
}

/// \param rows of all prints of `contents`
void complete_prints(Connection& connection, const std::vector<std::int64_t>& rows,
                     const Indexes& indexes, Contents& contents) {
    for (std::size_t i = 0; i < rows.size(); ++i) {
        auto& print = contents.prints[i];
        print.setup.files = files_of_print(connection, rows[i]);
        print.days = days_of(connection, rows[i], indexes);
        print.keys = keys_of(connection, rows[i]);
    }
}

void read_prints(Connection& connection, const Indexes& indexes, Contents& contents) {
    auto& rows = connection.statement("SELECT id, first_at, last_at, what, stock, layout, "
                                      "settings, look FROM print ORDER BY id");
    std::vector<std::int64_t> prints;
    while (rows.next()) {
        prints.push_back(read_print(connection, rows, contents));
    }
    complete_prints(connection, prints, indexes, contents);
}

/// What belongs to one description, whatever of it is wanted.
Statement& lineage_question(Connection& connection, int lineage) {
    return connection
        .statement("SELECT id, lineage, revision, made, kitchen, file, recorded, description, "
                   "station, ordered FROM day WHERE lineage = ? ORDER BY revision")
        .with(lineage);
}

void read_lineage(Connection& connection, int lineage, Indexes& indexes, Contents& contents) {
    auto& rows = lineage_question(connection, lineage);
    while (rows.next()) {
        read_day(connection, rows, indexes, contents);
    }
}

#define THAWSLIP_OF_LINEAGE "bag b JOIN package p ON p.id = b.package JOIN day d ON d.id = p.day "
#define THAWSLIP_IN_LINEAGE "bag IN (SELECT b.id FROM " THAWSLIP_OF_LINEAGE "WHERE d.lineage = ?) "

Statement& ids_question(Connection& connection, int lineage) {
    return connection
        .statement("SELECT bag, id FROM bag_id WHERE " THAWSLIP_IN_LINEAGE
                   "ORDER BY bag, newest DESC, id")
        .with(lineage);
}

Statement& bags_question(Connection& connection, int lineage) {
    return connection
        .statement("SELECT b.id, p.day, p.position, b.number FROM " THAWSLIP_OF_LINEAGE
                   "WHERE d.lineage = ? ORDER BY p.day, p.position, b.number, b.id")
        .with(lineage);
}

void read_bags(Connection& connection, int lineage, const Part& part, const Indexes& indexes,
               Contents& contents) {
    auto ids = ids_in(ids_question(connection, lineage));
    auto events = events_of_lineage(connection, lineage);
    auto& rows = bags_question(connection, lineage);
    while (rows.next()) {
        if (part.bags.contains(rows.integer(0)) || part.days.contains(rows.integer(1))) {
            read_bag(rows, ids, events, indexes, contents);
        }
    }
}

Statement& print_question(Connection& connection, std::int64_t print) {
    return connection
        .statement("SELECT id, first_at, last_at, what, stock, layout, settings, look FROM print "
                   "WHERE id = ?")
        .with(print);
}

void read_prints(Connection& connection, const std::set<std::int64_t>& prints,
                 const Indexes& indexes, Contents& contents) {
    std::vector<std::int64_t> rows;
    for (const auto print : prints) {
        if (auto& row = print_question(connection, print); row.next()) {
            rows.push_back(read_print(connection, row, contents));
        }
    }
    complete_prints(connection, rows, indexes, contents);
}

/// Whether to read all is sooner than one description after the other.
bool is_most(Connection& connection, const Part& part) {
    auto& row = connection.statement("SELECT count(*) FROM day WHERE revision = 1");
    row.next();
    return static_cast<std::int64_t>(part.lineages.size()) * 2 > row.integer(0);
}

/// What a part is asked for is sent at once.
void ask_part_ahead(Connection& connection, const Part& part) {
    for (const int lineage : part.lineages) {
        lineage_question(connection, lineage).ahead();
        ids_question(connection, lineage).ahead();
        ask_events_ahead(connection, lineage);
        bags_question(connection, lineage).ahead();
    }
    for (const auto print : part.prints) {
        print_question(connection, print).ahead();
    }
}

} // namespace

Contents contents_of(Connection& connection) {
    Contents contents;
    const auto indexes = read_days(connection, contents);
    read_bags(connection, indexes, contents);
    read_prints(connection, indexes, contents);
    return contents;
}

Contents contents_of(Connection& connection, const Part& part) {
    Contents contents;
    if (part.lineages.empty() && part.prints.empty()) {
        return contents;
    }
    if (is_most(connection, part)) {
        return contents_of(connection);
    }
    ask_part_ahead(connection, part);
    Indexes indexes;
    for (const int lineage : part.lineages) {
        read_lineage(connection, lineage, indexes, contents);
    }
    read_packages(connection, indexes, contents);
    for (const int lineage : part.lineages) {
        read_bags(connection, lineage, part, indexes, contents);
    }
    read_prints(connection, part.prints, indexes, contents);
    return contents;
}

Contents Archive::contents() {
    const Question question{*connection_};
    // One moment of the archive, whoever writes meanwhile.
    Transaction transaction{*connection_, Connection::For::Reading};
    auto contents = contents_of(*connection_);
    transaction.commit();
    return contents;
}

} // namespace thawslip::archive

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

void read_day(Connection& connection, const Statement& row, Indexes& indexes, Contents& contents) {
    indexes.emplace(row.integer(0), contents.days.size());
    contents.days.push_back({static_cast<int>(row.integer(1)),
                             static_cast<int>(row.integer(2)),
                             row.text(6),
                             row.integer(9),
                             {date_of(row.text(3)), row.text(4), row.text(5), row.text(7),
                              packages_of(connection, row.integer(0)), row.text(8)}});
}

Indexes read_days(Connection& connection, Contents& contents) {
    Indexes indexes;
    auto& rows =
        connection.statement("SELECT id, lineage, revision, made, kitchen, file, recorded, "
                             "description, station, ordered FROM day ORDER BY lineage, revision");
    while (rows.next()) {
        read_day(connection, rows, indexes, contents);
    }
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

std::vector<std::size_t> days_of(Connection& connection, std::int64_t print,
                                 const Indexes& indexes) {
    auto& rows = connection.statement("SELECT day FROM print_day WHERE print = ? ORDER BY position")
                     .with(print);
    std::vector<std::size_t> days;
    while (rows.next()) {
        days.push_back(indexes.at(rows.integer(0)));
    }
    return days;
}

std::vector<Contents::Key> keys_of(Connection& connection, std::int64_t print) {
    auto& rows =
        connection.statement("SELECT key, at, station FROM print_key WHERE print = ? ORDER BY key")
            .with(print);
    std::vector<Contents::Key> keys;
    while (rows.next()) {
        keys.push_back({rows.text(0), rows.text(1), rows.text(2)});
    }
    return keys;
}

void read_print(Connection& connection, const Statement& row, const Indexes& indexes,
                Contents& contents) {
    contents.prints.push_back({row.text(1),
                               row.text(2),
                               {row.text(3), row.text(4), row.text(5), row.text(6), row.text(7),
                                files_of_print(connection, row.integer(0))},
                               days_of(connection, row.integer(0), indexes),
                               keys_of(connection, row.integer(0))});
}

void read_prints(Connection& connection, const Indexes& indexes, Contents& contents) {
    auto& rows = connection.statement("SELECT id, first_at, last_at, what, stock, layout, "
                                      "settings, look FROM print ORDER BY id");
    while (rows.next()) {
        read_print(connection, rows, indexes, contents);
    }
}

/// What belongs to one description, whatever of it is wanted.
void read_lineage(Connection& connection, int lineage, Indexes& indexes, Contents& contents) {
    auto& rows =
        connection
            .statement("SELECT id, lineage, revision, made, kitchen, file, recorded, description, "
                       "station, ordered FROM day WHERE lineage = ? ORDER BY revision")
            .with(lineage);
    while (rows.next()) {
        read_day(connection, rows, indexes, contents);
    }
}

#define THAWSLIP_OF_LINEAGE "bag b JOIN package p ON p.id = b.package JOIN day d ON d.id = p.day "
#define THAWSLIP_IN_LINEAGE "bag IN (SELECT b.id FROM " THAWSLIP_OF_LINEAGE "WHERE d.lineage = ?) "

void read_bags(Connection& connection, int lineage, const Part& part, const Indexes& indexes,
               Contents& contents) {
    auto ids = ids_in(connection
                          .statement("SELECT bag, id FROM bag_id WHERE " THAWSLIP_IN_LINEAGE
                                     "ORDER BY bag, newest DESC, id")
                          .with(lineage));
    auto events = events_of_lineage(connection, lineage);
    auto& rows = connection
                     .statement("SELECT b.id, p.day, p.position, b.number FROM " THAWSLIP_OF_LINEAGE
                                "WHERE d.lineage = ? ORDER BY p.day, p.position, b.number, b.id")
                     .with(lineage);
    while (rows.next()) {
        if (part.bags.contains(rows.integer(0)) || part.days.contains(rows.integer(1))) {
            read_bag(rows, ids, events, indexes, contents);
        }
    }
}

void read_print(Connection& connection, std::int64_t print, const Indexes& indexes,
                Contents& contents) {
    auto& row = connection
                    .statement("SELECT id, first_at, last_at, what, stock, layout, settings, look "
                               "FROM print WHERE id = ?")
                    .with(print);
    if (row.next()) {
        read_print(connection, row, indexes, contents);
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
    constexpr std::size_t few = 100; // descriptions; of more, all is read sooner than one by one
    if (part.lineages.size() > few) {
        return contents_of(connection);
    }
    Contents contents;
    Indexes indexes;
    for (const int lineage : part.lineages) {
        read_lineage(connection, lineage, indexes, contents);
    }
    for (const int lineage : part.lineages) {
        read_bags(connection, lineage, part, indexes, contents);
    }
    for (const auto print : part.prints) {
        read_print(connection, print, indexes, contents);
    }
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

#include "archive/archive.h"
#include "archive/part.h"
#include "archive/tables/rows.h"

#include <array>
#include <fmt/format.h>
#include <map>
#include <set>

namespace thawslip::archive {
namespace {

// Two archives that hold nearly the same are compared by counts and sums over buckets first: what
// happened to bags, by station and 64 of its commands, then by command; prints and descriptions, by
// month. Only of what differs there every entry is asked for. Nothing is remembered of what was
// sent before, so a server or a file that was put back to a backup gets all that it has lost.

#define THAWSLIP_SUM(what) "CAST(coalesce(sum(" what "), 0) AS BIGINT)"

/// How one kind of entry is counted and listed. A bucket has a name and a number.
struct EntryKind {
    std::string_view buckets; ///< → name, number, count, sum
    std::string_view smaller; ///< name, number → smaller buckets of that one; empty: there are none
    std::string_view entries; ///< name, number → what it is known by, its row, a lineage or 0
};

constexpr EntryKind event_kind = {
    "SELECT station, seq / 64, count(*), " THAWSLIP_SUM(
        "ordered % 1000003") " FROM bag_event GROUP BY station, seq / 64",
    "SELECT station, seq, count(*), " THAWSLIP_SUM(
        "ordered % 1000003") " FROM bag_event WHERE station = ?1 AND seq >= ?2 * 64 AND seq < ?2 * "
                             "64 + 64 GROUP BY station, seq",
    "SELECT i.id || ' ' || e.seq || ' ' || e.ordered || ' ' || e.state, e.bag, d.lineage FROM "
    "bag_event e JOIN bag_id i ON i.bag = e.bag AND i.newest = 1 JOIN bag b ON b.id = e.bag JOIN "
    "package p ON p.id = b.package JOIN day d ON d.id = p.day WHERE e.station = ? AND e.seq = ?"};

// How often each of eight digits is in a print's key, in one number. Keys are of one length, so by
// that alone two prints of a month, each in one archive, would be taken for one that both have; and
// no hash of a text is called alike by both engines.
// clang-format off
#define THAWSLIP_WITHOUT(digit) " * CAST(length(replace(key, '" digit "', '')) AS BIGINT)"
#define THAWSLIP_DIGITS_OF_KEY \
    "1" THAWSLIP_WITHOUT("0") " + 17" THAWSLIP_WITHOUT("1") " + 289" THAWSLIP_WITHOUT("2") \
    " + 4913" THAWSLIP_WITHOUT("3") " + 83521" THAWSLIP_WITHOUT("4") \
    " + 1419857" THAWSLIP_WITHOUT("5") " + 24137569" THAWSLIP_WITHOUT("6") \
    " + 410338673" THAWSLIP_WITHOUT("7")
// clang-format on

constexpr EntryKind print_kind = {
    "SELECT substr(at, 1, 7), 0, count(*), " THAWSLIP_SUM(
        THAWSLIP_DIGITS_OF_KEY) " FROM print_key GROUP BY substr(at, 1, 7)",
    "", "SELECT key, print, 0 FROM print_key WHERE substr(at, 1, 7) = ? AND 0 = ?"};

constexpr EntryKind day_kind = {
    "SELECT substr(made, 1, 7), 0, count(*), " THAWSLIP_SUM(
        "ordered % 1000003 + hash % 1000003") " FROM day GROUP BY substr(made, 1, 7)",
    "",
    "SELECT ordered || ' ' || hash, id, lineage FROM day WHERE substr(made, 1, 7) = ? AND 0 = ?"};

using Bucket = std::pair<std::string, std::int64_t>;
using Sums = std::map<Bucket, std::pair<std::int64_t, std::int64_t>>;

Sums sums_in(Statement& rows) {
    Sums sums;
    while (rows.next()) {
        sums[{rows.text(0), rows.integer(1)}] = {rows.integer(2), rows.integer(3)};
    }
    return sums;
}

Statement& of_bucket(Connection& connection, std::string_view sql, const Bucket& bucket) {
    return connection.statement(sql).with(bucket.first).with(bucket.second);
}

/// The buckets of `here` that are otherwise there, or not at all.
std::vector<Bucket> differing(const Sums& here, const Sums& there) {
    std::vector<Bucket> buckets;
    for (const auto& [bucket, sums] : here) {
        const auto same = there.find(bucket);
        if (same == there.end() || same->second != sums) {
            buckets.push_back(bucket);
        }
    }
    return buckets;
}

/// The smaller buckets that differ in those that do.
std::vector<Bucket> differing_smaller(Connection& from, Connection& to, std::string_view sql,
                                      const std::vector<Bucket>& larger) {
    for (const auto& bucket : larger) {
        of_bucket(from, sql, bucket).ahead();
        of_bucket(to, sql, bucket).ahead();
    }
    std::vector<Bucket> buckets;
    for (const auto& bucket : larger) {
        const auto here = sums_in(of_bucket(from, sql, bucket));
        const auto smaller = differing(here, sums_in(of_bucket(to, sql, bucket)));
        buckets.insert(buckets.end(), smaller.begin(), smaller.end());
    }
    return buckets;
}

struct Entry {
    std::int64_t row = 0;
    int lineage = 0;
};

std::multimap<std::string, Entry> entries_of(Connection& connection, const EntryKind& kind,
                                             const Bucket& bucket) {
    auto& rows = of_bucket(connection, kind.entries, bucket);
    std::multimap<std::string, Entry> entries;
    while (rows.next()) {
        entries.emplace(rows.text(0), Entry{rows.integer(1), static_cast<int>(rows.integer(2))});
    }
    return entries;
}

std::vector<Entry> missing_entries(Connection& from, Connection& to, const EntryKind& kind) {
    const auto there = sums_in(to.statement(kind.buckets));
    auto buckets = differing(sums_in(from.statement(kind.buckets)), there);
    if (!kind.smaller.empty()) {
        buckets = differing_smaller(from, to, kind.smaller, buckets);
    }
    for (const auto& bucket : buckets) {
        of_bucket(from, kind.entries, bucket).ahead();
        of_bucket(to, kind.entries, bucket).ahead();
    }
    std::vector<Entry> missing;
    for (const auto& bucket : buckets) {
        const auto known = entries_of(to, kind, bucket);
        for (const auto& [name, entry] : entries_of(from, kind, bucket)) {
            if (!known.contains(name)) {
                missing.push_back(entry);
            }
        }
    }
    return missing;
}

std::set<int> lineages_of_print(Connection& connection, std::int64_t print) {
    auto& rows = connection
                     .statement("SELECT DISTINCT d.lineage FROM print_day q JOIN day d ON d.id = "
                                "q.day WHERE q.print = ?")
                     .with(print);
    std::set<int> lineages;
    while (rows.next()) {
        lineages.insert(static_cast<int>(rows.integer(0)));
    }
    return lineages;
}

} // namespace

Part part_missing(Connection& from, Connection& to) {
    for (const auto& kind : {event_kind, day_kind, print_kind}) {
        from.statement(kind.buckets).ahead();
        to.statement(kind.buckets).ahead();
    }
    Part part;
    for (const auto& event : missing_entries(from, to, event_kind)) {
        part.bags.insert(event.row);
        part.lineages.insert(event.lineage);
    }
    for (const auto& day : missing_entries(from, to, day_kind)) {
        part.days.insert(day.row);
        part.lineages.insert(day.lineage);
    }
    for (const auto& print : missing_entries(from, to, print_kind)) {
        part.prints.insert(print.row);
        part.lineages.merge(lineages_of_print(from, print.row));
    }
    return part;
}

Contents Archive::missing_in(Archive& other) {
    const Question question{*connection_};
    const Question there{*other.connection_};
    Transaction transaction{*connection_, Connection::For::Reading};
    auto contents = contents_of(*connection_, part_missing(*connection_, *other.connection_));
    transaction.commit();
    return contents;
}

} // namespace thawslip::archive

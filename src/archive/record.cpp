#include "archive/archive.h"
#include "archive/columns.h"
#include "archive/mended_name.h"
#include "archive/rows.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::archive {
namespace {

/// A revision that is in the archive.
struct Known {
    std::int64_t row = 0;
    int lineage = 0;
};

Known newest_of(Connection& connection, int lineage) {
    auto& row = connection
                    .statement("SELECT id FROM day WHERE lineage = ? ORDER BY revision DESC "
                               "LIMIT 1")
                    .with(lineage);
    row.next();
    return {row.integer(0), lineage};
}

/// The lineage of the newest revision that has one of the day's bags; 0 when none has.
int lineage_by_id(Connection& connection, const DayRecord& day) {
    for (const auto& package : day.packages) {
        for (const auto& id : package.bags) {
            auto& row =
                connection
                    .statement("SELECT d.lineage FROM bag_id i JOIN bag b ON b.id = i.bag JOIN "
                               "package p ON p.id = b.package JOIN day d ON d.id = p.day "
                               "WHERE i.id = ?")
                    .with(id);
            if (row.next()) {
                return static_cast<int>(row.integer(0));
            }
        }
    }
    return 0;
}

int lineage_by_file(Connection& connection, const DayRecord& day) {
    if (day.file.empty()) {
        return 0;
    }
    auto& row = connection
                    .statement("SELECT lineage FROM day WHERE file = ? AND made = ? "
                               "ORDER BY id DESC LIMIT 1")
                    .with(day.file)
                    .with(kitchen::to_iso(day.made));
    return row.next() ? static_cast<int>(row.integer(0)) : 0;
}

std::string description_of(Connection& connection, std::int64_t day) {
    auto& row = connection.statement("SELECT description FROM day WHERE id = ?").with(day);
    row.next();
    return row.text(0);
}

/// The same food under a name in which a slip was mended.
bool is_mended(const PackageRecord& before, const PackageRecord& now) {
    return before.made == now.made && before.food && before.food == now.food &&
           is_mended_name(before.words, now.words);
}

/// For each package of `day`: the row of the older package whose bags it renames, or 0.
std::vector<std::int64_t> mended_packages(Connection& connection, const DayRecord& day,
                                          const Known& before) {
    const auto old_packages = packages_of(connection, before.row);
    const auto rows = package_rows(connection, before.row);
    std::vector<std::int64_t> mended(day.packages.size(), 0);
    for (std::size_t i = 0; i < std::min(mended.size(), rows.size()); ++i) {
        const auto& now = day.packages[i];
        const bool known = std::ranges::any_of(
            now.bags, [&](const std::string& id) { return bag_row(connection, id) != 0; });
        const bool still_there = std::ranges::any_of(day.packages, [&](const PackageRecord& other) {
            return other.dish == old_packages[i].dish && other.made == old_packages[i].made;
        });
        if (!known && !still_there && is_mended(old_packages[i], now)) {
            mended[i] = rows[i];
        }
    }
    return mended;
}

std::int64_t bag_of_package(Connection& connection, std::int64_t package, int number) {
    auto& row = connection.statement("SELECT id FROM bag WHERE package = ? AND number = ?")
                    .with(package)
                    .with(number);
    return row.next() ? row.integer(0) : 0;
}

std::string newest_id(Connection& connection, std::int64_t bag) {
    auto& row =
        connection.statement("SELECT id FROM bag_id WHERE bag = ? AND newest = 1").with(bag);
    return row.next() ? row.text(0) : std::string{};
}

/// An id tells of a dish, a day and a number by a hash: two of one day may share it, though it is
/// not likely (kitchen/bag_id.h). The label of one food must not stick on another.
void require_same_dish(const PackageRecord& before, const PackageRecord& now,
                       const std::string& id) {
    const bool same = before.made == now.made &&
                      (before.dish == now.dish || is_mended_name(before.words, now.words));
    if (!same) {
        throw ArchiveFailure{
            {ArchiveFault::Kind::Clash,
             fmt::format("{} is the id of a bag of \"{}\" made {} already: do not use these "
                         "labels, and give \"{}\" another name",
                         id, before.dish, kitchen::to_iso(before.made), now.dish)}};
    }
}

/// Whether an old label says something else about what is in the bag.
bool is_relabelled(const PackageRecord& before, const PackageRecord& now) {
    return before.food && now.food && before.food != now.food;
}

/// Puts the bags of one package of a new revision where they belong.
/// \param mended the row of the package whose name was mended into this one, or 0
void record_bags(Connection& connection, const PackageRecord& package, std::int64_t row,
                 std::int64_t mended, const std::string& at, Recorded& recorded) {
    int number = 0;
    for (const auto& id : package.bags) {
        ++number;
        if (const auto known = bag_row(connection, id)) {
            const auto before = package_of_bag(connection, known);
            require_same_dish(before, package, id);
            if (is_relabelled(before, package)) {
                recorded.relabelled.push_back(id);
            }
            describe_bag(connection, known, row, number);
            make_newest(connection, known, id);
            continue;
        }
        if (const auto bag = mended != 0 ? bag_of_package(connection, mended, number) : 0) {
            recorded.renamed.emplace_back(newest_id(connection, bag), id);
            insert_id(connection, id, bag, false);
            describe_bag(connection, bag, row, number);
            make_newest(connection, bag, id);
            continue;
        }
        insert_id(connection, id, insert_bag(connection, row, number, State::Frozen, at), true);
        ++recorded.new_bags;
    }
}

void note_dropped(Connection& connection, const Known& before, Recorded& recorded) {
    auto& rows = connection
                     .statement("SELECT i.id FROM bag b JOIN package p ON p.id = b.package JOIN "
                                "bag_id i ON i.bag = b.id AND i.newest = 1 "
                                "WHERE p.day = ? ORDER BY p.position, b.number")
                     .with(before.row);
    while (rows.next()) {
        recorded.dropped.push_back(rows.text(0));
    }
}

std::int64_t record_revision(Connection& connection, const DayRecord& day, const Known& before,
                             const std::vector<std::int64_t>& mended, const std::string& at,
                             Recorded& recorded) {
    const bool is_new = before.lineage == 0;
    const int lineage = is_new ? next_lineage(connection) : before.lineage;
    const int revision = last_revision(connection, lineage) + 1;
    const auto row = insert_day(connection, day, lineage, revision, at);
    const auto packages = package_rows(connection, row);
    for (std::size_t i = 0; i < packages.size(); ++i) {
        record_bags(connection, day.packages[i], packages[i], mended.empty() ? 0 : mended[i], at,
                    recorded);
    }
    ++(is_new ? recorded.new_days : recorded.revisions);
    if (!is_new) {
        note_dropped(connection, before, recorded);
    }
    return row;
}

/// \returns the row of the revision that holds
std::int64_t record_day(Connection& connection, const DayRecord& day, const std::string& at,
                        Recorded& recorded) {
    if (const int lineage = lineage_by_id(connection, day)) {
        const auto before = newest_of(connection, lineage);
        if (description_of(connection, before.row) == day.description &&
            same_packages(packages_of(connection, before.row), day.packages)) {
            return before.row;
        }
        return record_revision(connection, day, before, mended_packages(connection, day, before),
                               at, recorded);
    }
    if (const int lineage = lineage_by_file(connection, day)) {
        const auto before = newest_of(connection, lineage);
        const auto mended = mended_packages(connection, day, before);
        if (std::ranges::any_of(mended, [](std::int64_t row) { return row != 0; })) {
            return record_revision(connection, day, before, mended, at, recorded);
        }
        // Nothing surely the same is left of what this file described: other bags, it seems.
        note_dropped(connection, before, recorded);
    }
    return record_revision(connection, day, {}, {}, at, recorded);
}

bool holds_no_print(Connection& connection) {
    auto& rows = connection.statement("SELECT 1 FROM print LIMIT 1");
    return !rows.next();
}

} // namespace

Recorded Archive::record(const PrintRecord& print) {
    auto& connection = *connection_;
    Recorded recorded;
    const Question question{connection};
    Transaction transaction{connection.database()};
    std::vector<std::int64_t> days;
    StoredPrint stored{print.at, print.at, print.setup, {}};
    for (const auto& day : print.days) {
        days.push_back(record_day(connection, day, print.at, recorded));
        stored.days.push_back(DayKey{days.back()});
    }
    if (const auto known = print_row(connection, print.setup, days)) {
        connection.statement("UPDATE print SET last_at = ? WHERE id = ?")
            .with(print.at)
            .with(known)
            .run();
    } else {
        recorded.is_first_print = holds_no_print(connection);
        insert_print(connection, stored);
        recorded.print_is_new = true;
    }
    transaction.commit();
    return recorded;
}

} // namespace thawslip::archive

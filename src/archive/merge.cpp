#include "archive/archive.h"
#include "archive/columns.h"
#include "archive/rows.h"

#include <algorithm>
#include <map>
#include <set>

namespace thawslip::archive {
namespace {

std::vector<std::string> ids_of(Connection& connection, std::int64_t bag) {
    auto& rows =
        connection.statement("SELECT id FROM bag_id WHERE bag = ? ORDER BY newest DESC, id")
            .with(bag);
    std::vector<std::string> ids;
    while (rows.next()) {
        ids.push_back(rows.text(0));
    }
    return ids;
}

/// Where each day's row stands in the contents.
using Indexes = std::map<std::int64_t, std::size_t>;

Indexes read_days(Connection& connection, Contents& contents) {
    Indexes indexes;
    auto& rows =
        connection.statement("SELECT id, lineage, revision, made, kitchen, file, recorded, "
                             "description FROM day ORDER BY lineage, revision");
    while (rows.next()) {
        indexes.emplace(rows.integer(0), contents.days.size());
        contents.days.push_back({static_cast<int>(rows.integer(1)),
                                 static_cast<int>(rows.integer(2)),
                                 rows.text(6),
                                 {date_of(rows.text(3)), rows.text(4), rows.text(5), rows.text(7),
                                  packages_of(connection, rows.integer(0))}});
    }
    return indexes;
}

void read_bags(Connection& connection, const Indexes& indexes, Contents& contents) {
    auto& rows = connection.statement(
        "SELECT b.id, p.day, p.position, b.number, b.state, b.changed FROM bag b JOIN package p "
        "ON p.id = b.package ORDER BY p.day, p.position, b.number, b.id");
    while (rows.next()) {
        contents.bags.push_back({ids_of(connection, rows.integer(0)), indexes.at(rows.integer(1)),
                                 static_cast<int>(rows.integer(2)),
                                 static_cast<int>(rows.integer(3)),
                                 state_of(rows.text(4)).value_or(State::Frozen), rows.text(5)});
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

void read_prints(Connection& connection, const Indexes& indexes, Contents& contents) {
    auto& rows = connection.statement("SELECT id, first_at, last_at, what, stock, layout, "
                                      "settings, look FROM print ORDER BY id");
    while (rows.next()) {
        contents.prints.push_back({rows.text(1),
                                   rows.text(2),
                                   {rows.text(3), rows.text(4), rows.text(5), rows.text(6),
                                    rows.text(7), files_of_print(connection, rows.integer(0))},
                                   days_of(connection, rows.integer(0), indexes)});
    }
}

/// One merge under way: what the other's days are called here.
class Merge {
public:
    Merge(Connection& connection, const Contents& other)
        : connection_{connection}, other_{other}, rows_(other.days.size(), 0),
          added_(other.days.size(), false) {}

    Merged run() {
        match_days();
        match_bags();
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            if (rows_[i] == 0) {
                add_day(i);
            }
        }
        for (const auto& bag : other_.bags) {
            if (!clashes_.contains(&bag)) {
                add_bag(bag);
            }
        }
        for (const auto& print : other_.prints) {
            add_print(print);
        }
        return merged_;
    }

private:
    /// Finds the descriptions that both have, and with them the lineages.
    void match_days() {
        std::set<std::int64_t> taken;
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const auto& day = other_.days[i];
            auto& known = connection_
                              .statement("SELECT id, lineage FROM day WHERE description = ? AND "
                                         "made = ? AND hash = ? ORDER BY id")
                              .with_bytes(day.record.description)
                              .with(kitchen::to_iso(day.record.made))
                              .with(hash_of_description(day.record.description));
            while (rows_[i] == 0 && known.next()) {
                // A description that was edited and edited back stands there twice.
                if (!taken.contains(known.integer(0)) &&
                    same_packages(packages_of(connection_, known.integer(0)),
                                  day.record.packages)) {
                    rows_[i] = known.integer(0);
                    taken.insert(rows_[i]);
                    lineages_.emplace(day.lineage, static_cast<int>(known.integer(1)));
                }
            }
        }
    }

    /// Descriptions that only the other has may still be revisions of ours, by their bags.
    void match_bags() {
        const auto shared = lineages_;
        for (const auto& bag : other_.bags) {
            const int lineage = other_.days[bag.day].lineage;
            const auto row = known_bag(bag);
            if (row == 0) {
                continue;
            }
            if (shared.contains(lineage) ||
                same_food(package_of_bag(connection_, row), there(bag))) {
                lineages_.emplace(lineage, lineage_of_bag(row));
            } else {
                clashes_.insert(&bag);
                merged_.clashes.push_back(bag.ids.front());
            }
        }
    }

    const PackageRecord& there(const Contents::Bag& bag) const {
        return other_.days[bag.day].record.packages[static_cast<std::size_t>(bag.position - 1)];
    }

    void add_day(std::size_t index) {
        const auto& day = other_.days[index];
        auto lineage = lineages_.find(day.lineage);
        if (lineage == lineages_.end()) {
            lineage = lineages_.emplace(day.lineage, next_lineage(connection_)).first;
        }
        rows_[index] = insert_day(connection_, day.record, lineage->second,
                                  last_revision(connection_, lineage->second) + 1, day.recorded);
        added_[index] = true;
        ++merged_.days;
    }

    void add_bag(const Contents::Bag& bag) {
        auto row = known_bag(bag);
        if (row == 0) {
            row = insert_bag(connection_, package_row(bag), bag.number, bag.state, bag.changed);
            ++merged_.bags;
            for (const auto& id : bag.ids) {
                insert_id(connection_, id, row, &id == &bag.ids.front());
            }
            return;
        }
        for (const auto& id : bag.ids) {
            if (bag_row(connection_, id) == 0) {
                insert_id(connection_, id, row, false);
            }
        }
        take_later_description(row, bag);
        take_later_state(row, bag);
    }

    /// A revision that only the other had, and that is younger than ours, describes the bag now.
    void take_later_description(std::int64_t row, const Contents::Bag& bag) {
        auto& ours = connection_
                         .statement("SELECT d.recorded FROM bag b JOIN package p ON p.id = "
                                    "b.package JOIN day d ON d.id = p.day WHERE b.id = ?")
                         .with(row);
        if (added_[bag.day] && ours.next() && ours.text(0) < other_.days[bag.day].recorded) {
            describe_bag(connection_, row, package_row(bag), bag.number);
            if (bag_row(connection_, bag.ids.front()) == row) {
                make_newest(connection_, row, bag.ids.front());
            }
        }
    }

    std::int64_t package_row(const Contents::Bag& bag) {
        return package_rows(connection_, rows_[bag.day])
            .at(static_cast<std::size_t>(bag.position - 1));
    }

    void take_later_state(std::int64_t row, const Contents::Bag& bag) {
        auto& later = connection_
                          .statement("UPDATE bag SET state = ?1, changed = ?2 WHERE id = ?3 AND "
                                     "changed < ?2 AND state <> ?1 RETURNING id")
                          .with(word_of(bag.state))
                          .with(bag.changed)
                          .with(row);
        while (later.next()) {
            ++merged_.states;
        }
    }

    void add_print(const Contents::Print& print) {
        StoredPrint stored{print.first_at, print.last_at, print.setup, {}};
        std::vector<std::int64_t> days;
        for (const auto index : print.days) {
            days.push_back(rows_[index]);
            stored.days.push_back(DayKey{rows_[index]});
        }
        if (const auto known = print_row(connection_, print.setup, days)) {
            connection_
                .statement("UPDATE print SET first_at = min(first_at, ?1), last_at = max(last_at, "
                           "?2) WHERE id = ?3")
                .with(print.first_at)
                .with(print.last_at)
                .with(known)
                .run();
            return;
        }
        insert_print(connection_, stored);
        ++merged_.prints;
    }

    std::int64_t known_bag(const Contents::Bag& bag) {
        for (const auto& id : bag.ids) {
            if (const auto row = bag_row(connection_, id)) {
                return row;
            }
        }
        return 0;
    }

    int lineage_of_bag(std::int64_t bag) {
        auto& row = connection_
                        .statement("SELECT d.lineage FROM bag b JOIN package p ON p.id = b.package "
                                   "JOIN day d ON d.id = p.day WHERE b.id = ?")
                        .with(bag);
        row.next();
        return static_cast<int>(row.integer(0));
    }

    Connection& connection_;
    const Contents& other_;
    std::vector<std::int64_t> rows_;
    std::vector<bool> added_;     ///< days that were not here
    std::map<int, int> lineages_; ///< the other's → ours
    std::set<const Contents::Bag*> clashes_;
    Merged merged_;
};

} // namespace

Contents Archive::contents() {
    const Question question{*connection_};
    connection_->database().run("BEGIN"); // one moment of the archive, whoever writes meanwhile
    Contents contents;
    try {
        const auto indexes = read_days(*connection_, contents);
        read_bags(*connection_, indexes, contents);
        read_prints(*connection_, indexes, contents);
    } catch (...) {
        connection_->database().run("ROLLBACK");
        throw;
    }
    connection_->rest();
    connection_->database().run("COMMIT");
    return contents;
}

Merged Archive::merge(const Contents& other) {
    const Question question{*connection_};
    if (const auto fault = fault_in(other)) {
        throw ArchiveFailure{{ArchiveFault::Kind::Damaged, *fault}};
    }
    Transaction transaction{connection_->database()};
    auto merged = Merge{*connection_, other}.run();
    connection_->rest();
    transaction.commit();
    return merged;
}

} // namespace thawslip::archive

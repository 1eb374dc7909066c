#include "archive/archive.h"
#include "archive/events.h"
#include "archive/tables/columns.h"
#include "archive/tables/rows.h"
#include "base/list.h"

#include <algorithm>
#include <map>
#include <set>
#include <unordered_map>

namespace thawslip::archive {
namespace {

/// Where a revision stands among others, and nothing else stands.
struct Place {
    std::int64_t ordered = 0;
    std::int64_t hash = 0;
    friend auto operator<=>(const Place&, const Place&) = default;
};

Place place_of(const Contents::Day& day) {
    return {day.ordered, hash_of_description(day.record.description)};
}

Statement& home_question(Connection& connection, std::int64_t bag) {
    return connection
        .statement("SELECT d.ordered, d.hash, d.lineage FROM bag b JOIN package p ON p.id = "
                   "b.package JOIN day d ON d.id = p.day WHERE b.id = ?")
        .with(bag);
}

/// Where a bag that is here belongs.
struct Home {
    Place place;
    int lineage = 0;
};

std::set<std::string> origins_of(const std::vector<PackageRecord>& packages) {
    return mapped<std::set<std::string>>(packages, &PackageRecord::origin);
}

/// One merge under way: what the other's days are called here.
class Merge {
public:
    Merge(Connection& connection, const Contents& other, Kitchens kitchens)
        : connection_{connection}, other_{other}, kitchens_{kitchens}, rows_(other.days.size(), 0),
          left_out_(other.days.size(), false) {
        for (const auto& day : other.days) {
            origins_[day.lineage].merge(origins_of(day.record.packages));
        }
    }

    Merged run() {
        match_days();
        find_ids();
        find_homes();
        match_bags();
        leave_days_out();
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            if (rows_[i] == 0 && !left_out_[i]) {
                add_day(i);
            }
        }
        for (const int lineage : grown_) {
            number_revisions(connection_, lineage);
        }
        for (const auto& bag : other_.bags) {
            if (!clashes_.contains(&bag)) {
                add_bag(bag);
            }
        }
        merged_.states += static_cast<int>(find_states(connection_, known_bags_).size());
        find_states(connection_, new_bags_);
        find_renamed();
        for (const auto& print : other_.prints) {
            add_print(print);
        }
        return merged_;
    }

private:
    /// Finds the revisions that both have, and with them the lineages. A description that was
    /// edited and edited back stands there twice, at two places.
    void match_days() {
        for (const auto& day : other_.days) {
            same_day(day).ahead();
        }
        std::vector<std::vector<std::pair<std::int64_t, int>>> known(rows_.size());
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            auto& rows = same_day(other_.days[i]);
            while (rows.next()) {
                known[i].emplace_back(rows.integer(0), static_cast<int>(rows.integer(1)));
                ask_packages_ahead(connection_, rows.integer(0));
            }
        }
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const auto& day = other_.days[i];
            for (const auto& [row, lineage] : known[i]) {
                const auto packages = packages_of(connection_, row);
                if (rows_[i] == 0 && !taken_.contains(row) &&
                    same_packages(packages, day.record.packages) &&
                    origins_of(packages) == origins_of(day.record.packages)) {
                    rows_[i] = row;
                    taken_.insert(row);
                    lineages_.emplace(day.lineage, lineage);
                }
            }
        }
    }

    Statement& same_day(const Contents::Day& day) {
        return connection_
            .statement("SELECT id, lineage FROM day WHERE description = ? AND made = ? AND hash = "
                       "? AND ordered = ? ORDER BY id")
            .with_bytes(day.record.description)
            .with(kitchen::to_iso(day.record.made))
            .with(hash_of_description(day.record.description))
            .with(day.ordered);
    }

    void find_ids() {
        std::vector<std::string> ids;
        for (const auto& bag : other_.bags) {
            ids.insert(ids.end(), bag.ids.begin(), bag.ids.end());
        }
        ask_rows_ahead(connection_);
        rows_of_ids_ = bag_rows(connection_, ids);
        std::erase_if(rows_of_ids_, [](const auto& one) { return one.second == 0; });
    }

    void find_homes() {
        std::set<std::int64_t> bags;
        for (const auto& [id, row] : rows_of_ids_) {
            bags.insert(row);
        }
        for (const auto bag : bags) {
            home_question(connection_, bag).ahead();
            ask_package_ahead(connection_, bag);
        }
        for (const auto bag : bags) {
            auto& row = home_question(connection_, bag);
            if (row.next()) {
                homes_[bag] = {{row.integer(0), row.integer(1)}, static_cast<int>(row.integer(2))};
            }
            packages_of_bags_[bag] = package_of_bag(connection_, bag);
        }
    }

    /// Bags of one id are one bag, or they clash. Descriptions that only the other has may be
    /// revisions of ours, by their bags.
    void match_bags() {
        for (const auto& bag : other_.bags) {
            const auto& known = known_bags(bag);
            if (known.empty()) {
                continue;
            }
            if (known.size() == 1 && is_same(*known.begin(), bag)) {
                lineages_.emplace(other_.days[bag.day].lineage, homes_[*known.begin()].lineage);
            } else {
                clashes_.insert(&bag);
            }
        }
        leave_batches_out();
    }

    /// What a bag is of, as its label says it.
    struct BatchName {
        int lineage = 0;
        std::string dish;
        kitchen::Date made;
        std::string origin;
        friend auto operator<=>(const BatchName&, const BatchName&) = default;
    };
    BatchName batch_of(const Contents::Bag& bag) const {
        const auto& package = there(bag);
        return {other_.days[bag.day].lineage, package.dish, package.made, package.origin};
    }

    /// A batch comes with all of its bags or with none: where some ids of it are on others here,
    /// the rest would be printed and counted with those.
    void leave_batches_out() {
        std::set<BatchName> clashing;
        for (const auto* bag : clashes_) {
            clashing.insert(batch_of(*bag));
        }
        for (const auto& bag : other_.bags) {
            if (clashes_.contains(&bag) ||
                (clashing.contains(batch_of(bag)) && known_bags(bag).empty())) {
                clashes_.insert(&bag);
                merged_.clashes.push_back(bag.ids.front());
            }
        }
    }

    /// A batch is the same where one archive has it from the other; else, where the cook says that
    /// the kitchen is one, by its id and food. A kitchen's number in the id says less, for settings
    /// are copied with it: there the description must be the same to the letter, too.
    bool is_same(std::int64_t row, const Contents::Bag& bag) {
        const auto& here = packages_of_bags_[row];
        const auto& that = there(bag);
        if (origins_here(homes_[row].lineage).contains(that.origin) ||
            origins_.at(other_.days[bag.day].lineage).contains(here.origin)) {
            return true;
        }
        const bool one_number = here.batch.kitchen_number != 0 &&
                                here.batch.kitchen_number == that.batch.kitchen_number;
        return same_food(here, that) &&
               (kitchens_ == Kitchens::AreOne ||
                (one_number && has_text_of(row, other_.days[bag.day].lineage)));
    }

    /// Whether the bag's description was once, to the letter, what the other's was once.
    bool has_text_of(std::int64_t bag, int other_lineage) {
        const int lineage = homes_[bag].lineage;
        return std::ranges::any_of(other_.days, [&](const Contents::Day& day) {
            return day.lineage == other_lineage &&
                   connection_
                       .statement("SELECT 1 FROM day WHERE lineage = ? AND hash = ? AND "
                                  "description = ?")
                       .with(lineage)
                       .with(hash_of_description(day.record.description))
                       .with_bytes(day.record.description)
                       .next();
        });
    }

    const std::set<std::string>& origins_here(int lineage) {
        const auto [known, is_new] = origins_here_.try_emplace(lineage);
        auto& origins = known->second;
        if (!is_new) {
            return origins;
        }
        auto& rows = connection_
                         .statement("SELECT DISTINCT p.origin FROM package p JOIN day d ON d.id = "
                                    "p.day WHERE d.lineage = ? AND p.origin <> ''")
                         .with(lineage);
        while (rows.next()) {
            origins.insert(rows.text(0));
        }
        return origins;
    }

    const PackageRecord& there(const Contents::Bag& bag) const {
        return other_.days[bag.day].record.packages[static_cast<std::size_t>(bag.position - 1)];
    }

    /// A description whose every bag clashes would only be taken for ours.
    void leave_days_out() {
        std::set<int> clashing;
        std::set<int> kept;
        for (const auto& bag : other_.bags) {
            (clashes_.contains(&bag) ? clashing : kept).insert(other_.days[bag.day].lineage);
        }
        for (std::size_t i = 0; i < rows_.size(); ++i) {
            const int lineage = other_.days[i].lineage;
            left_out_[i] = rows_[i] == 0 && clashing.contains(lineage) && !kept.contains(lineage);
        }
    }

    void add_day(std::size_t index) {
        const auto& day = other_.days[index];
        auto lineage = lineages_.find(day.lineage);
        if (lineage == lineages_.end()) {
            lineage = lineages_.emplace(day.lineage, new_lineage()).first;
            revisions_[lineage->second] = 0;
        }
        auto last = revisions_.find(lineage->second);
        if (last == revisions_.end()) {
            const int revision = last_revision(connection_, lineage->second);
            last = revisions_.emplace(lineage->second, revision).first;
        }
        auto [row, packages] = insert_day(connection_, day.record, lineage->second, ++last->second,
                                          day.recorded, day.ordered);
        rows_[index] = row;
        packages_[row] = std::move(packages);
        new_days_.insert(row);
        grown_.insert(lineage->second);
        ++merged_.days;
    }

    int new_lineage() {
        last_lineage_ = last_lineage_ == 0 ? next_lineage(connection_) : last_lineage_ + 1;
        return last_lineage_;
    }

    void add_bag(const Contents::Bag& bag) {
        const auto& known = known_bags(bag);
        const bool is_new = known.empty();
        const auto row = is_new ? add_new_bag(bag) : *known.begin();
        for (const auto& id : bag.ids) {
            if (is_new || !rows_of_ids_.contains(id)) {
                insert_id(connection_, id, row, is_new && &id == &bag.ids.front());
            }
        }
        if (!is_new) {
            take_later_description(row, bag);
            known_bags_.push_back(row);
        }
        for (const auto& event : bag.events) {
            insert_event(connection_, row, event);
        }
    }

    std::int64_t add_new_bag(const Contents::Bag& bag) {
        ++merged_.bags;
        const auto& first = bag.events.front();
        if (bag.events.size() == 1 && says_state_alone(first)) {
            return insert_bag(connection_, package_row(bag), bag.number, *first.state, first.at,
                              first.place);
        }
        new_bags_.push_back(insert_bag(connection_, package_row(bag), bag.number));
        return new_bags_.back();
    }

    void take_later_description(std::int64_t row, const Contents::Bag& bag) {
        if (homes_[row].place < place_of(other_.days[bag.day])) {
            describe_bag(connection_, row, package_row(bag), bag.number);
            make_newest(connection_, row, bag.ids.front());
            homes_[row].place = place_of(other_.days[bag.day]);
        }
    }

    std::int64_t package_row(const Contents::Bag& bag) {
        const auto day = rows_[bag.day];
        const auto [known, is_new] = packages_.try_emplace(day);
        if (is_new) {
            known->second = package_rows(connection_, day);
        }
        return known->second.at(static_cast<std::size_t>(bag.position - 1));
    }

    void add_print(const Contents::Print& print) {
        StoredPrint stored{print.first_at, print.last_at, print.setup, {}};
        std::vector<std::int64_t> days;
        for (const auto index : print.days) {
            if (left_out_[index]) {
                return;
            }
            days.push_back(rows_[index]);
            stored.days.push_back(DayKey{rows_[index]});
        }
        const bool is_of_new =
            std::ranges::any_of(days, [this](std::int64_t day) { return new_days_.contains(day); });
        const bool is_first = printed_.insert(days).second;
        auto row = is_of_new && is_first ? 0 : print_row(connection_, print.setup, days);
        if (row != 0) {
            connection_
                .statement("UPDATE print SET first_at = CASE WHEN first_at < ?1 THEN first_at "
                           "ELSE ?1 END, last_at = CASE WHEN last_at > ?2 THEN last_at ELSE ?2 "
                           "END WHERE id = ?3")
                .with(print.first_at)
                .with(print.last_at)
                .with(row)
                .run();
        } else {
            row = insert_print(connection_, stored);
            ++merged_.prints;
        }
        for (const auto& [key, at, station] : print.keys) {
            insert_print_key(connection_, row, key, at, station);
        }
    }

    /// A bag may have come before the one that it was renamed to. Where nothing says a new name or
    /// takes one back, only those are looked at that wait for what came now.
    void find_renamed() {
        std::set<std::string> came;
        bool is_any = false;
        for (const auto& bag : other_.bags) {
            came.insert(bag.ids.begin(), bag.ids.end());
            is_any = is_any || std::ranges::any_of(bag.events, [](const BagEvent& event) {
                         return event.state == State::Renamed || event.undoes != 0;
                     });
        }
        std::set<std::int64_t> renamed;
        auto& rows = connection_.statement(
            "SELECT DISTINCT bag, joined FROM bag_event WHERE state = 'renamed'");
        while (rows.next()) {
            if (is_any || came.contains(rows.text(1))) {
                renamed.insert(rows.integer(0));
            }
        }
        for (const auto bag : renamed) {
            find_state(connection_, bag);
        }
    }

    /// The bags here that have one of its ids. No two bags of the other share one, so what is added
    /// of it changes nothing of that.
    const std::set<std::int64_t>& known_bags(const Contents::Bag& bag) {
        const auto [at, is_new] = known_.try_emplace(&bag);
        if (is_new) {
            at->second = bags_with_ids_of(bag);
        }
        return at->second;
    }

    std::set<std::int64_t> bags_with_ids_of(const Contents::Bag& bag) {
        std::set<std::int64_t> known;
        for (const auto& id : bag.ids) {
            const auto row = rows_of_ids_.find(id);
            if (row != rows_of_ids_.end()) {
                known.insert(row->second);
            }
        }
        return known;
    }

    Connection& connection_;
    const Contents& other_;
    Kitchens kitchens_;
    std::vector<std::int64_t> rows_;
    std::map<std::int64_t, std::vector<std::int64_t>> packages_; ///< rows of a day's, once asked
    std::unordered_map<const Contents::Bag*, std::set<std::int64_t>> known_;
    IdRows rows_of_ids_;           ///< those that are here
    std::vector<bool> left_out_;   ///< days of descriptions whose every bag clashes
    std::set<std::int64_t> taken_; ///< days here that are matched
    std::set<std::int64_t> new_days_;
    std::set<std::vector<std::int64_t>> printed_;  ///< days of prints so far
    std::vector<std::int64_t> new_bags_;           ///< whose state is to be found
    std::vector<std::int64_t> known_bags_;         ///< the same of those that were here
    std::unordered_map<std::int64_t, Home> homes_; ///< of bags here
    std::unordered_map<std::int64_t, PackageRecord> packages_of_bags_;
    std::map<int, std::set<std::string>> origins_here_;
    std::map<int, int> revisions_;                 ///< the last of lineages here
    int last_lineage_ = 0;                         ///< that was added
    std::map<int, int> lineages_;                  ///< the other's → ours
    std::set<int> grown_;                          ///< lineages here that got a revision
    std::map<int, std::set<std::string>> origins_; ///< of the other's lineages
    std::set<const Contents::Bag*> clashes_;
    Merged merged_;
};

} // namespace

Merged Archive::merge(const Contents& other, Kitchens kitchens) {
    const Question question{*connection_};
    if (const auto fault = fault_in(other)) {
        throw ArchiveFailure{{ArchiveFault::Kind::Damaged, *fault}};
    }
    Transaction transaction{*connection_};
    auto merged = Merge{*connection_, other, kitchens}.run();
    transaction.commit();
    return merged;
}

} // namespace thawslip::archive

#include "archive/identity.h"

#include "archive/archive.h"
#include "archive/batches_there.h"
#include "archive/mended_name.h"
#include "archive/tables/columns.h"
#include "base/letters.h"
#include "base/list.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <set>

namespace thawslip::archive {
namespace {

/// Whether two batches are surely of two kitchens: by their numbers, else by their names.
bool are_apart(int number, const std::string& name, int other_number,
               const std::string& other_name) {
    if (number != 0 && other_number != 0) {
        return number != other_number;
    }
    return !name.empty() && !other_name.empty() && !same_but_for_case(name, other_name);
}

int kitchen_number_of(const DayRecord& day) {
    return day.packages.empty() ? 0 : day.packages.front().batch.kitchen_number;
}

/// A newest revision, with what its days were read from.
struct Revision {
    std::int64_t row = 0;
    int lineage = 0;
    std::string file;
};

Statement& text_question(Connection& connection, const DayRecord& day) {
    return connection
        .statement("SELECT d.id, d.lineage, d.file, d.kitchen FROM day d WHERE d.hash = ?1 AND "
                   "d.description = ?2 AND d.made = ?3 AND d.revision = (SELECT max(revision) FROM "
                   "day WHERE lineage = d.lineage) AND (d.station IN ('', ?4) OR EXISTS (SELECT 1 "
                   "FROM print_day q JOIN print_key k ON k.print = q.print WHERE q.day = d.id AND "
                   "k.station = ?4)) ORDER BY d.id")
        .with(hash_of_description(day.description))
        .with_bytes(day.description)
        .with(kitchen::to_iso(day.made))
        .with(day.station);
}

/// Revisions whose text is the same to the letter, whatever a program of their time made of it,
/// that were printed at this station (or before stations had names) and hold for their
/// descriptions.
std::vector<Revision> same_texts(Connection& connection, const DayRecord& day) {
    auto& rows = text_question(connection, day);
    std::vector<Revision> found;
    while (rows.next()) {
        const auto packages = packages_of(connection, rows.integer(0));
        const bool apart =
            !packages.empty() && are_apart(packages.front().batch.kitchen_number, rows.text(3),
                                           kitchen_number_of(day), day.kitchen);
        if (!apart && packages.size() == day.packages.size()) {
            found.push_back({rows.integer(0), static_cast<int>(rows.integer(1)), rows.text(2)});
        }
    }
    const auto elsewhere = [&day](const Revision& one) { return one.file != day.file; };
    if (!std::ranges::all_of(found, elsewhere)) {
        std::erase_if(found, elsewhere);
    }
    return found;
}

Statement& file_question(Connection& connection, const DayRecord& day) {
    return connection
        .statement("SELECT lineage, station, kitchen, coalesce((SELECT kitchen_number FROM package "
                   "WHERE day = day.id LIMIT 1), 0) FROM day WHERE file = ? AND made = ? ORDER BY "
                   "id DESC")
        .with(day.file)
        .with(kitchen::to_iso(day.made));
}

/// The descriptions that were read from the day's file, the newest first. A path says nothing
/// about another station's files.
std::vector<int> lineages_of_file(Connection& connection, const DayRecord& day) {
    std::vector<int> found;
    if (day.file.empty()) {
        return found;
    }
    auto& rows = file_question(connection, day);
    while (rows.next()) {
        const int lineage = static_cast<int>(rows.integer(0));
        const auto station = rows.text(1);
        const bool here = station.empty() || day.station.empty()
                              ? !are_apart(static_cast<int>(rows.integer(3)), rows.text(2),
                                           kitchen_number_of(day), day.kitchen)
                              : station == day.station;
        if (here && std::ranges::find(found, lineage) == found.end()) {
            found.push_back(lineage);
        }
    }
    return found;
}

/// Whether bags of the one may be what the other tells of: both in sizes or both not, or as many
/// servings.
bool may_be_size(const PackageRecord& before, const PackageRecord& now) {
    const bool one_way = (before.batch.size == 0) == (now.batch.size == 0);
    return one_way || before.servings == now.servings;
}

/// The same food under a name in which a slip was mended, or in bags of a size that was.
bool is_mended(const PackageRecord& before, const PackageRecord& now) {
    return before.made == now.made && before.food && before.food == now.food &&
           may_be_size(before, now) && is_mended_name(before.words, now.words);
}

/// What a description says of a dish of that name and day, by all of its revisions.
std::vector<PackageRecord> told_of(Connection& connection, int lineage,
                                   const PackageRecord& package) {
    auto& rows =
        connection
            .statement("SELECT p.day, p.position FROM package p JOIN day d ON d.id = p.day "
                       "WHERE d.lineage = ? AND p.dish = ? AND p.made = ? AND p.size = ?")
            .with(lineage)
            .with(package.dish)
            .with(kitchen::to_iso(package.made))
            .with(package.batch.size);
    std::vector<PackageRecord> told;
    while (rows.next()) {
        auto packages = packages_of(connection, rows.integer(0));
        told.push_back(std::move(packages.at(static_cast<std::size_t>(rows.integer(1)) - 1)));
    }
    return told;
}

/// Whether two first prints are of one batch. Where a merge took them for that, one description has
/// both, and told the same of both then. Where it left bags out, it may have both too.
bool are_one(Connection& connection, int lineage, const PackageRecord& package,
             const std::string& origin) {
    if (origin == package.origin) {
        return true;
    }
    const auto told = told_of(connection, lineage, package);
    return std::ranges::any_of(told, [&](const PackageRecord& one) {
        return one.origin == origin && std::ranges::any_of(told, [&](const PackageRecord& other) {
                   return other.origin == package.origin && same_food(one, other);
               });
    });
}

bool has_dish(const DayRecord& day, const PackageRecord& package) {
    return std::ranges::any_of(day.packages, [&package](const PackageRecord& other) {
        return other.dish == package.dish && other.made == package.made &&
               other.batch.size == package.batch.size;
    });
}

/// Who gives out a batch's number.
enum class Numbers { OfArchive, OfStation };

std::vector<std::string> ids_of_batch(const PackageRecord& package, const kitchen::Batch& batch) {
    std::vector<std::string> ids;
    for (int number = 1; number <= static_cast<int>(package.bags.size()); ++number) {
        ids.push_back(kitchen::bag_id({package.dish, package.made, number, batch}));
    }
    return ids;
}

/// What is there already of what a day may want to be called by.
struct Taken {
    std::vector<NamedBatch> batches;
    const IdRows& ids; ///< those that were asked about
};

bool is_taken(Connection& connection, const Taken& taken, const PackageRecord& package,
              const kitchen::Batch& batch) {
    const NamedBatch named{package.dish, kitchen::to_iso(package.made), batch};
    if (std::ranges::find(taken.batches, named) != taken.batches.end()) {
        return true;
    }
    const auto ids = ids_of_batch(package, batch); // two hashes may be the same
    const auto is_known = [&](const std::string& id) { return taken.ids.contains(id); };
    const auto asked = std::ranges::all_of(ids, is_known) ? IdRows{} : bag_rows(connection, ids);
    const auto& rows = asked.empty() ? taken.ids : asked;
    return std::ranges::any_of(ids, [&rows](const std::string& id) { return rows.at(id) != 0; });
}

/// The batch as it was planned or, where there is such a one, with a number made from the
/// description: two archives that have not met yet hardly give one number to two batches. A station
/// never gives the planned number, and makes its own from its name too: another may be printing the
/// same text at this moment, for another pot.
kitchen::Batch free_batch(Connection& connection, const DayRecord& day, const Taken& taken,
                          const PackageRecord& package, kitchen::Batch batch, Numbers numbers) {
    constexpr std::uint64_t most = std::uint64_t{1} << 40U;
    bool is_own = numbers == Numbers::OfArchive;
    for (int attempt = 0; !is_own || is_taken(connection, taken, package, batch); ++attempt) {
        is_own = true;
        const auto station = numbers == Numbers::OfStation ? day.station + "\x1F" : std::string{};
        const auto text = fmt::format("{}{}\x1F{}", station, attempt, day.description);
        batch.number = static_cast<std::int64_t>(2 + kitchen::fnv_1a(text) % most);
    }
    return batch;
}

/// One description being identified.
class Identification {
public:
    Identification(Connection& connection, const DayRecord& day, const WhichBatch& which,
                   const IdRows& ids)
        : connection_{connection}, day_{day}, which_{which}, ids_{ids}, files_{lineages_of_file(
                                                                            connection, day)} {
        decision_.packages.resize(day.packages.size());
        found_.resize(day.packages.size());
        for (const auto& id : which.bags) {
            if (const auto row = bag_row(connection, id); row != 0) {
                named_.emplace(id, row);
            }
        }
    }

    Decision run() {
        const auto texts = same_texts(connection_, day_);
        if (which_.kind != WhichBatch::Kind::New && take_revision(texts)) {
            return decision_;
        }
        auto candidates = all_candidates(connection_, day_);
        for (std::size_t i = 0; i < day_.packages.size(); ++i) {
            identify(i, texts, std::move(candidates[i]));
        }
        if (which_.kind == WhichBatch::Kind::New) {
            make_new();
        }
        find_lineage();
        const Taken taken{all_taken(connection_, day_), ids_};
        for (std::size_t i = 0; i < day_.packages.size(); ++i) {
            fill(i, taken);
        }
        return decision_;
    }

private:
    /// Where one revision is surely meant, all is known.
    bool take_revision(const std::vector<Revision>& texts) {
        std::map<std::string, int> lineages;
        for (const auto& [id, row] : named_) {
            lineages.emplace(id, lineage_of_bag(connection_, row));
        }
        const auto fits = [&](const Revision& text) {
            return lineages.empty() ? texts.size() == 1
                                    : std::ranges::any_of(lineages, [&](const auto& named) {
                                          return named.second == text.lineage;
                                      });
        };
        const auto found = std::ranges::find_if(texts, fits);
        if (found == texts.end()) {
            return false;
        }
        const auto packages = packages_of(connection_, found->row);
        find_left_out(packages, found->lineage);
        if (!left_out_.empty()) {
            return false;
        }
        for (std::size_t i = 0; i < packages.size(); ++i) {
            decision_.packages[i] = {packages[i].batch, packages[i].origin, 0};
        }
        decision_.lineage = found->lineage;
        decision_.newest = found->row;
        decision_.is_newest = same_packages(packages, day_.packages);
        for (const auto& [id, lineage] : lineages) {
            if (lineage == found->lineage) {
                decision_.fits.insert(id);
            }
        }
        return true;
    }

    /// Packages of a description that came from another archive without its bags: here their ids
    /// are on others. All bags of a batch came, or none, and the first is always one of them.
    void find_left_out(const std::vector<PackageRecord>& packages, int lineage) {
        for (std::size_t i = 0; i < packages.size(); ++i) {
            const auto& package = packages[i];
            const auto first = bag_row(
                connection_, kitchen::bag_id({package.dish, package.made, 1, package.batch}));
            if (first != 0 && !is_of_batch(connection_, first, package, lineage)) {
                left_out_.insert(i);
            }
        }
    }

    /// Whether the day's file told of that very batch when it was last read, or not of the dish.
    bool is_of_file(const Candidate& candidate, const PackageRecord& package) {
        auto& row = connection_
                        .statement("SELECT p.origin FROM package p JOIN day d ON d.id = p.day "
                                   "WHERE d.lineage = ? AND d.file = ? AND d.station IN ('', ?) "
                                   "AND p.dish = ? AND p.made = ? AND p.size = ? ORDER BY "
                                   "d.ordered DESC, d.id DESC LIMIT 1")
                        .with(candidate.lineage)
                        .with(day_.file)
                        .with(day_.station)
                        .with(package.dish)
                        .with(kitchen::to_iso(package.made))
                        .with(package.batch.size);
        if (!row.next()) {
            return true;
        }
        auto told = package;
        told.origin = row.text(0);
        return are_one(connection_, candidate.lineage, told, candidate.origin);
    }

    /// The batch that one of the named bags is of. Several may be of one, not of two.
    bool take_named(std::size_t i, const std::vector<Candidate>& all) {
        const auto& package = day_.packages[i];
        for (const auto& [id, row] : named_) {
            auto of_bag = package_of_bag(connection_, row);
            of_bag.batch.size = package.batch.size; // all sizes of a dish were filled together
            const auto named = std::ranges::find(all, of_bag.batch, &Candidate::batch);
            if (named != all.end() && of_bag.dish == package.dish && of_bag.made == package.made &&
                (!found_[i] || found_[i]->batch == named->batch)) {
                found_[i] = *named;
                decision_.fits.insert(id);
            }
        }
        return found_[i].has_value();
    }

    void identify(std::size_t i, const std::vector<Revision>& texts, std::vector<Candidate> all) {
        const auto& package = day_.packages[i];
        if (take_named(i, all)) {
            return;
        }
        std::vector<Candidate> of_file;
        std::ranges::copy_if(all, std::back_inserter(of_file), [&](const Candidate& candidate) {
            return std::ranges::find(files_, candidate.lineage) != files_.end();
        });
        if (of_file.size() == 1 && texts.size() < 2 && !left_out_.contains(i) &&
            is_of_file(of_file.front(), package)) {
            found_[i] = of_file.front();
            return;
        }
        auto& unsure = of_file.empty() ? all : of_file;
        std::erase_if(unsure, [&](const Candidate& candidate) {
            return of_file.empty() &&
                   are_apart(candidate.batch.kitchen_number, candidate.known.kitchen,
                             package.batch.kitchen_number, day_.kitchen);
        });
        if (!unsure.empty()) {
            decision_.doubts.push_back({i, mapped(unsure, &Candidate::known)});
        }
    }

    void make_new() {
        if (decision_.doubts.empty() && named_.empty()) {
            std::ranges::fill(found_, std::nullopt);
            decision_.is_another = true;
        }
        decision_.doubts.clear();
    }

    void find_lineage() {
        if (decision_.is_another) {
            return;
        }
        for (const auto& found : found_) {
            const bool of_file = found && std::ranges::find(files_, found->lineage) != files_.end();
            if (found && (decision_.lineage == 0 || of_file)) {
                decision_.lineage = found->lineage;
            }
        }
        const bool by_bags = decision_.lineage != 0;
        const int before = by_bags ? decision_.lineage : files_.empty() ? 0 : files_.front();
        if (before == 0) {
            return;
        }
        decision_.newest = newest_revision(connection_, before);
        if (find_mended() || by_bags) {
            decision_.lineage = before;
        } else if (which_.kind == WhichBatch::Kind::New) {
            decision_.newest = 0; // what the file told of before is another, and there still
        }
    }

    /// Bags of the revision before whose dish has a name now in which a slip was mended.
    bool find_mended() {
        const auto before = packages_of(connection_, decision_.newest);
        const auto rows = package_rows(connection_, decision_.newest);
        bool any = false;
        for (std::size_t i = 0; i < std::min(found_.size(), before.size()); ++i) {
            if (!found_[i] && !is_doubtful(i) && !has_dish(day_, before[i]) &&
                is_mended(before[i], day_.packages[i])) {
                decision_.packages[i] = {before[i].batch, before[i].origin, rows[i]};
                decision_.packages[i].batch.size = day_.packages[i].batch.size;
                any = true;
            }
        }
        return any;
    }

    bool is_doubtful(std::size_t package) const {
        return std::ranges::find(decision_.doubts, package, &Doubt::package) !=
               decision_.doubts.end();
    }

    void fill(std::size_t i, const Taken& taken) {
        const auto& package = day_.packages[i];
        auto& identified = decision_.packages[i];
        if (found_[i]) {
            identified = {found_[i]->batch, found_[i]->origin, 0};
            return;
        }
        const bool is_new = identified.mended == 0;
        const auto numbers =
            is_new && is_of_station(connection_) ? Numbers::OfStation : Numbers::OfArchive;
        identified.batch = free_batch(connection_, day_, taken, package,
                                      is_new ? package.batch : identified.batch, numbers);
    }

    Connection& connection_;
    const DayRecord& day_;
    const WhichBatch& which_;
    const IdRows& ids_; ///< of ids that were asked about already
    std::vector<int> files_;
    std::map<std::string, std::int64_t> named_; ///< rows of the bags that the cook named
    std::vector<std::optional<Candidate>> found_;
    std::set<std::size_t> left_out_; ///< packages whose ids are on bags of another batch here
    Decision decision_;
};

} // namespace

bool is_of_batch(Connection& connection, std::int64_t bag, const PackageRecord& package,
                 int lineage) {
    const auto here = package_of_bag(connection, bag);
    return here.origin == package.origin || (lineage_of_bag(connection, bag) == lineage &&
                                             are_one(connection, lineage, package, here.origin));
}

bool Archive::is_of(const std::string& id, DayKey day, std::size_t package) {
    const Question question{*connection_};
    const auto row = static_cast<std::int64_t>(day);
    const auto bag = bag_row(*connection_, id);
    auto& origin =
        connection_->statement("SELECT origin FROM package WHERE day = ? AND position = ?")
            .with(row)
            .with(static_cast<std::int64_t>(package) + 1);
    if (bag == 0 || !origin.next()) {
        return false;
    }
    if (package_of_bag(*connection_, bag).origin == origin.text(0)) {
        return true; // as nearly always
    }
    return is_of_batch(*connection_, bag, packages_of(*connection_, row).at(package),
                       lineage_of_day(*connection_, row));
}

Decision decide(Connection& connection, const DayRecord& day, const WhichBatch& which,
                const IdRows& ids) {
    return Identification{connection, day, which, ids}.run();
}

void ask_decision_ahead(Connection& connection, const DayRecord& day) {
    file_question(connection, day).ahead();
    text_question(connection, day).ahead();
    ask_batches_ahead(connection, day);
}

namespace {

std::vector<std::string> ids_as_planned(const DayRecord& day) {
    std::vector<std::string> ids;
    for (const auto& package : day.packages) {
        std::ranges::move(ids_of_batch(package, package.batch), std::back_inserter(ids));
    }
    return ids;
}

} // namespace

Settled Archive::settle(const DayRecord& day, const WhichBatch& which) {
    const Question question{*connection_};
    Transaction transaction{*connection_, Connection::For::Reading};
    ask_decision_ahead(*connection_, day);
    auto decision = decide(*connection_, day, which, bag_rows(*connection_, ids_as_planned(day)));
    transaction.commit();
    return {mapped(decision.packages, [](const auto& package) { return package.batch; }),
            std::move(decision.doubts), std::move(decision.fits)};
}

} // namespace thawslip::archive

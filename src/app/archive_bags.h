#pragma once

#include "app/commands.h"
#include "archive/archive.h"
#include "kitchen/plan.h"

#include <map>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// The bags meant by ids as they are typed: service::bags_by_id. What stands in the way is said on
/// `console.err`; then nothing is returned.
std::optional<std::vector<archive::Bag>>
bags_by_id(archive::Archive& archive, const std::vector<std::string>& typed, Console console);

/// What to say of a description that is not what was recorded: which it is, and what helps.
std::string rotten_text(const archive::StoredDay& day);

/// A bag of the archive and what it was filled with.
struct KnownBag {
    archive::Bag bag;                ///< its newest id, its state, the date on its label
    kitchen::PlannedPackage package; ///< as its day's description has it, planned as it was printed
};

/// What bags of the archive were filled with: the newest description of their day that has them,
/// read and planned with the settings of its newest print. Each day is read once, however many of
/// its bags are asked for.
class PackagesOfBags {
public:
    explicit PackagesOfBags(archive::Archive& archive) : archive_{&archive} {}

    /// nullptr where the description cannot be read any longer: a later Thawslip wrote it, or it
    /// is not what was recorded. Valid as long as this object.
    const kitchen::PlannedPackage* of(const archive::Bag& bag);
    /// Why there is none, in words.
    std::string why_not(const archive::Bag& bag) const;

private:
    archive::Archive* archive_;
    std::map<archive::DayKey, std::vector<kitchen::PlannedPackage>> days_;
};

/// The same for a bag's id as it is typed, from the archive that `settings` name. What stands in
/// the way (no archive, no such id, a wrong check character) is said on `console.err`, with the
/// nearest ids there are; then nothing is returned, and the status to leave with is Refused.
/// \throws SystemFailure or archive::ArchiveFailure where the archive cannot be read
std::optional<KnownBag> package_of(const std::string& typed_id, const Settings& settings,
                                   Console console);

/// Whether these words of a command line mean bags of the archive: none of them names a file.
bool mean_bags(const std::vector<std::string>& typed);

/// Which bags are to be eaten.
struct BagsToEat {
    std::vector<std::string> typed; ///< ids, or words of a dish
    int of_each = 1;                ///< bags of each dish, where words are given
    kitchen::Date on;
};

/// The packages of the bags that are meant, the soonest date first, each with only those bags.
/// What stands in the way is said on `console.err`; then nothing is returned, and the status to
/// leave with is Refused. Bags whose date is past by then, or that are out already, are cautioned
/// about.
std::optional<std::vector<kitchen::PlannedPackage>>
packages_meant(const BagsToEat& wanted, const Settings& settings, Console console);

} // namespace thawslip::app

#pragma once

#include "app/commands.h"
#include "archive/archive.h"
#include "kitchen/plan.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::app {

/// The bags meant by ids as people type them: small letters, O for 0, I or L for 1, dashes or
/// none. What is no id, or none that is known, is said on `console.err` with the nearest ids there
/// are; then nothing is returned.
std::optional<std::vector<archive::Bag>>
bags_by_id(archive::Archive& archive, const std::vector<std::string>& typed, Console console);

/// The bags meant by ids, or by words of the dish where the first word is none.
std::optional<std::vector<archive::Bag>>
bags_meant(archive::Archive& archive, const std::vector<std::string>& typed, Console console);

/// A bag of the archive and what it was filled with.
struct KnownBag {
    archive::Bag bag;                ///< its newest id, its state, the date on its label
    kitchen::PlannedPackage package; ///< as its day's description has it, planned as it was printed
};

/// The package that `bag` was filled with: its day's newest description that has it, read and
/// planned with the settings of its newest print. Reads that one day only. Nothing where the
/// description cannot be read any longer: a later Thawslip wrote it.
std::optional<kitchen::PlannedPackage> package_of(archive::Archive& archive,
                                                  const archive::Bag& bag);

/// The same for a bag's id as it is typed, from the archive that `settings` name. What stands in
/// the way (no archive, no such id, a wrong check character) is said on `console.err`, with the
/// nearest ids there are; then nothing is returned, and the status to leave with is Refused.
/// \throws SystemFailure or archive::ArchiveFailure where the archive cannot be read
std::optional<KnownBag> package_of(const std::string& typed_id, const Settings& settings,
                                   Console console);

} // namespace thawslip::app

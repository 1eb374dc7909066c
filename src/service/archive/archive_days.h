#pragma once

#include "archive/archive.h"
#include "base/progress.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// A dish of which the archive says something else than its description does.
struct Differing {
    archive::DayKey day{};
    int position = 1;                 ///< of the dish; 0: the day itself
    archive::DayRecord described;     ///< as the description has it; no packages: only the words
    archive::PackageRecord put_right; ///< what the archive should say of the dish
    std::string what;                 ///< in words: what stands where
};

/// Reads each description again, with the settings that it was printed with, and holds against it
/// what the archive keeps: the day and its kitchen, and of each dish its name and how it is
/// searched for, the day it was made, its servings, weight, number of bags, allergens and kinds of
/// food, how it thaws, and its date. A date or a time that a list or a calculation gave may only be
/// on the safe side of what they give now. Of what was never printed, what hangs on settings is not
/// looked at; what cannot be read any longer, and what schema 1 did not keep, not at all.
/// \pre archive.check() finds nothing wrong with the descriptions
std::vector<Differing> held_against_days(archive::Archive& archive, const Progress& progress = {});

/// The same of what comes from others, in words.
std::vector<std::string> held_against_days(const archive::Contents& contents,
                                           const Progress& progress = {});

/// Has the archive say what the descriptions say. \returns what was put right, in words
std::vector<std::string> rebuild_from_days(archive::Archive& archive);

} // namespace thawslip::service

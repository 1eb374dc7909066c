#pragma once

#include "archive/archive.h"

#include <string>
#include <vector>

namespace thawslip::app {

/// A dish of which the archive says something else than its description does.
struct Differing {
    archive::DayKey day{};
    int position = 1;
    archive::PackageRecord described; ///< as the description has it
    std::string what;                 ///< in words: what stands where
};

/// Reads each description again, with the settings that it was printed with, and holds the name of
/// each dish, its servings, number of bags, allergens and kinds of food against what the archive
/// keeps of it. What was never printed, or cannot be read any longer, is not looked at; what schema
/// 1 did not keep neither.
/// \pre archive.check() finds nothing wrong with the descriptions
std::vector<Differing> held_against_days(archive::Archive& archive);

/// Has the archive say what the descriptions say. \returns what was put right, in words
std::vector<std::string> rebuild_from_days(archive::Archive& archive);

} // namespace thawslip::app

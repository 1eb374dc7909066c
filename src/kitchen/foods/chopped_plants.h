#pragma once

#include <span>
#include <string>

namespace thawslip::kitchen {

/// Whether words name an herb, a spice, a nut or another plant that recipes have ground, minced or
/// chopped: "ground cumin", "ajo picado", "gehackte Petersilie" are no ground meat. Common
/// practice, no source; where nothing of it is named, what is ground counts as meat. \param words
/// as words_of gives them
bool names_chopped_plant(std::span<const std::string> words);

} // namespace thawslip::kitchen

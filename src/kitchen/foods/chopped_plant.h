#pragma once

#include "kitchen/texts/lexicon.h"

namespace thawslip::kitchen {

/// Whether words that are said of minced meat are said of a plant: "gehackte Petersilie",
/// "almendras picadas", with at most other adjectives between. Not where a joining word or a comma
/// parts them: "Gehacktes mit Zwiebeln" is meat.
bool is_chopped_plant(const WordedText& text);

} // namespace thawslip::kitchen

#pragma once

#include "thawslip/outcome.h"

#include <string>
#include <vector>

namespace thawslip {

/// What a label's code says of its bag.
struct BagText {
    std::string dish;
    std::string id;
    std::string keep_until; ///< ISO 8601; empty where the code does not say
    bool raw = false;
    int servings = 0; ///< 0 where the code does not say
    std::vector<std::string> steps;
    std::vector<std::string> cautions;
    bool see_card = false; ///< it had no room for all: the cook-day card says the rest
};

/// Reads the text of a code, as any scanner types it. A text that is damaged, or of a later
/// grammar, is refused and shown.
Outcome<BagText> read_code_text(const std::string& text);

} // namespace thawslip

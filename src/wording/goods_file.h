#pragma once

#include "wording/goods.h"

#include <string>

namespace thawslip::wording {

/// The plural of a word as the rule of a language has it: English and Spanish; German has none, and
/// keeps the word.
std::string plural_by_rule(const std::string& word, std::string_view language);

/// Adds a word, or "one/several", under the keys of both.
void add_word(Goods& goods, const std::string& written, GoodsWord word);

} // namespace thawslip::wording

#pragma once

#include "wording/goods.h"

#include <span>
#include <string>

namespace thawslip::wording {

/// The key under which words are kept: their stems with single spaces between.
std::string goods_key(std::span<const std::string> words);

/// The plural of a word as the rule of a language has it: English and Spanish; German has none, and
/// keeps the word.
std::string plural_by_rule(const std::string& word, std::string_view language);

/// Adds a word, or "one/several", under the keys of both.
void add_word(Goods& goods, const std::string& written, GoodsWord word);

} // namespace thawslip::wording

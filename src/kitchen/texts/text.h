#pragma once

#include "base/letters.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// The words of `text` for looking things up: small letters without accents, in order. A word is
/// a run of letters (an apostrophe is dropped: "lady's" is "ladys"); everything else parts words.
/// Letters beyond Latin stay as they are.
std::vector<std::string> words_of(std::string_view text);

/// What stands between the spaces of a text that has single ones.
std::vector<std::string> split_at_spaces(std::string_view text);

/// `value` with at most `places` decimals, zeros at the end left out; never "-0". The user's
/// locale has no say in it.
std::string decimal(double value, int places, char decimal_mark = '.');

} // namespace thawslip::kitchen

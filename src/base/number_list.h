#pragma once

#include "base/result.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip {

/// Whole numbers as people list them: "3-5,9", "3 4", "3; 5 – 7". Sorted, each once.
/// \param most the highest number that may be listed, and how many there may be
/// \returns the numbers, or what is wrong with the text
Result<std::vector<int>, std::string> read_number_list(std::string_view text, int most);

} // namespace thawslip

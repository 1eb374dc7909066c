#pragma once

#include <cstddef>
#include <string>
#include <vector>

namespace thawslip::code {

/// Places in `texts`, fullest first, of the shortest that say all that the fullest says of what is
/// added and of how it is cooked: with every step, and without the steps, where that is another.
std::vector<std::size_t> shortest_with_instructions(const std::vector<std::string>& texts);

} // namespace thawslip::code

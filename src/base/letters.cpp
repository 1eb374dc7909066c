#include "base/letters.h"

#include <algorithm>

namespace thawslip {

std::string lower(std::string_view text) {
    std::string small{text};
    std::ranges::transform(small, small.begin(), to_lower);
    return small;
}

bool same_but_for_case(std::string_view a, std::string_view b) {
    return std::ranges::equal(a, b, {}, to_lower, to_lower);
}

} // namespace thawslip

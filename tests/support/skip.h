#pragma once

#include <iostream>
#include <string_view>

namespace thawslip::test_support {

/// Says why a test cannot be made here, so that ctest counts it as skipped (tests/CMakeLists.txt
/// looks for the line). Whoever calls it returns at once.
inline void skip(std::string_view why) {
    std::cout << "skipped: " << why << std::endl;
}

} // namespace thawslip::test_support

#pragma once

#include <cstddef>
#include <string>

namespace thawslip::kitchen {

/// What is wrong with a text, and the byte where it is wrong.
struct TextFault {
    std::size_t offset = 0;
    std::string message;
    friend bool operator==(const TextFault&, const TextFault&) = default;
};

} // namespace thawslip::kitchen

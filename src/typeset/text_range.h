#pragma once

#include <cstddef>

namespace thawslip::typeset {

/// Bytes [begin, end) of a text.
struct TextRange {
    std::size_t begin = 0;
    std::size_t end = 0;
    friend bool operator==(const TextRange&, const TextRange&) = default;
};

} // namespace thawslip::typeset

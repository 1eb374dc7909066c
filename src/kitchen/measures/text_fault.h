#pragma once

#include "base/result.h"

#include <cstddef>
#include <string>
#include <utility>

namespace thawslip::kitchen {

/// What is wrong with a text, and the byte where it is wrong.
struct TextFault {
    std::size_t offset = 0;
    std::string message;
    friend bool operator==(const TextFault&, const TextFault&) = default;
};

/// What a reader gives back for the text that is wrong at a byte.
inline Failure<TextFault> fault_at(std::size_t offset, std::string message) {
    return Failure{TextFault{offset, std::move(message)}};
}

} // namespace thawslip::kitchen

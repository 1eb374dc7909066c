#pragma once

#include "kitchen/quantity.h"

#include <cstddef>
#include <optional>
#include <string_view>

namespace thawslip::kitchen {

/// A number as cooks write one, and where the text goes on after it.
struct ReadAmount {
    Amount amount;
    std::size_t end = 0;
};

/// Two numbers, or one that is both ends.
struct ReadRange {
    Amount low;
    Amount high;
    std::size_t end = 0;
};

/// Reads "2", "2.2", "2,2", "½", "1½", "1/2", "1 1/2" at byte `at`. Nothing where none stands
/// there, or where it has more digits than any kitchen needs.
std::optional<ReadAmount> read_amount(std::string_view text, std::size_t at);

/// Reads "3", "3-4", "3–4", "3 to 4" at byte `at`.
std::optional<ReadRange> read_range(std::string_view text, std::size_t at);

std::size_t skip_spaces(std::string_view text, std::size_t at);

} // namespace thawslip::kitchen

#pragma once

#include "base/result.h"
#include "kitchen/quantity.h"
#include "kitchen/text_fault.h"

#include <cstddef>
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

/// Reads "2", "2.2", "2,2", "½", "1½", "1/2", "1 1/2" at byte `at`. The fault's message is empty
/// where no number stands there. Refused, and told why: more than 6 digits or 4 decimals, division
/// by 0, and "1,000", which is 1 to some and 1000 to others.
Result<ReadAmount, TextFault> read_amount(std::string_view text, std::size_t at);

/// Reads "3", "3-4", "3–4", "3 to 4" at byte `at`. "1-1/2" is 1½, as it is often typed, since no
/// range runs backwards. Faults as of `read_amount`.
Result<ReadRange, TextFault> read_range(std::string_view text, std::size_t at);

std::size_t skip_spaces(std::string_view text, std::size_t at);

} // namespace thawslip::kitchen

#pragma once

#include "base/result.h"
#include "kitchen/quantity.h"

#include <cstddef>
#include <string>
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

/// Why no number could be read, and the byte of the text where that shows.
struct NumberFault {
    enum class Kind {
        Absent,    ///< none begins here; no fault where words may stand instead
        TooLong,   ///< more digits than any kitchen needs
        OverZero,  ///< 1/0
        Thousands, ///< "1,000": a thousand in one country, one in another
        Malformed, ///< "1/2/3", "2.5.1"
    };
    Kind kind = Kind::Absent;
    std::size_t offset = 0;
};

std::string message(NumberFault::Kind kind);

/// Reads "2", "2.2", "2,2", "½", "1½", "1/2", "1⁄2", "1 1/2" at byte `at`: at most six digits
/// before the point and four after it. What follows does not go on like a number.
Result<ReadAmount, NumberFault> read_amount(std::string_view text, std::size_t at);

/// Reads "3", "3-4", "3–4", "3 to 4", "3 or 4" at byte `at`.
Result<ReadRange, NumberFault> read_range(std::string_view text, std::size_t at);

/// The length of the dash, "to " or "or " that stands between the ends of a range at `at`, else 0.
std::size_t range_mark(std::string_view text, std::size_t at);

/// The bytes of the space at `at`, plain or no-break; 0 where none stands there.
std::size_t space_at(std::string_view text, std::size_t at);
std::size_t skip_spaces(std::string_view text, std::size_t at);

} // namespace thawslip::kitchen

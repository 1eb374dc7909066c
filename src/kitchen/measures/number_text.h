#pragma once

#include "base/result.h"
#include "kitchen/measures/quantity.h"
#include "kitchen/measures/text_fault.h"

#include <cstddef>
#include <optional>
#include <span>
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

/// Reads "2", "2.2", "2,2", "½", "1½", "1/2", "1⁄2", "1 1/2" at byte `at`. The fault's message is
/// empty where no number begins there, so that words may stand instead. Refused, and told why: more
/// than six digits before the point or four after it, division by 0, "1,000", which is 1 to some
/// and 1000 to others, and what goes on like a number ("1/2/3").
Result<ReadAmount, TextFault> read_amount(std::string_view text, std::size_t at);

/// Reads "3", "3-4", "3–4", "3 to 4", "3 or 4" at byte `at`. "1-1/2" is 1½, as it is often typed,
/// since no range runs backwards. Faults as of `read_amount`.
Result<ReadRange, TextFault> read_range(std::string_view text, std::size_t at);

/// Where a number of `text` has three digits after its point, and one to three before it that are
/// not 0: the fault names both readings of it, "2.5 or 2500". Nothing where none has.
std::optional<TextFault> thousands_in_doubt(std::string_view text);

/// Whether there was no number at all, rather than a bad one.
inline bool is_absent(const TextFault& fault) {
    return fault.message.empty();
}

/// The length of the dash, "to " or "or " that stands between the ends of a range at `at`, else 0.
std::size_t range_mark(std::string_view text, std::size_t at);

/// The first of some phrases with which a text in small letters begins, a space behind it; empty
/// where it begins with none.
std::string_view opening(std::span<const std::string_view> phrases, std::string_view small);

/// The bytes of the space at `at`, plain or no-break; 0 where none stands there.
std::size_t space_at(std::string_view text, std::size_t at);
std::size_t skip_spaces(std::string_view text, std::size_t at);

} // namespace thawslip::kitchen

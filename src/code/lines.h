#pragma once

#include "kitchen/day.h"

#include <array>
#include <optional>
#include <string>
#include <string_view>

// The words of the grammar, and how dates, times and temperatures are written in it: what
// `write` and `parse` must agree on.
namespace thawslip::code {

struct Target;

inline constexpr std::string_view mark = " * "; ///< between the fields of one line

inline constexpr std::array<std::string_view, 12> months = {
    "JAN", "FEB", "MAR", "APR", "MAY", "JUN", "JUL", "AUG", "SEP", "OCT", "NOV", "DEC"};

std::string date_text(kitchen::Date date);             ///< `17 OCT 2026`
std::string duration_text(std::chrono::minutes time);  ///< `2 H`, `90 MIN`
std::string time_text(const kitchen::TimeRange& time); ///< `7-9 H`, `45 MIN`
std::string target_text(const Target& target);         ///< `74 C`, `73.9 C`

// The inverses; nothing where `text` is not what the function above would write.
std::optional<int> whole_number(std::string_view text); ///< digits only, at most 9
std::optional<kitchen::Date> date_of(std::string_view text);
std::optional<std::chrono::minutes> duration_of(std::string_view text);
std::optional<kitchen::TimeRange> time_of(std::string_view text);
std::optional<Target> target_of(std::string_view text);

} // namespace thawslip::code

#pragma once

#include <chrono>
#include <optional>
#include <string>
#include <string_view>

namespace thawslip::kitchen {

/// A local calendar day: no time zone, as on a kitchen calendar.
using Date = std::chrono::year_month_day;

/// `date` plus a number of calendar months. Where the target month has no such day, its last day:
/// 31 Aug + 6 months is 28 Feb (29 in a leap year).
/// \pre date.ok()
Date add_months(Date date, std::chrono::months months);

Date add_days(Date date, std::chrono::days days); ///< \pre date.ok()

/// Days from `from` to `to`; negative when `to` is earlier.
std::chrono::days days_between(Date from, Date to);

std::string to_iso(Date date); ///< ISO 8601 calendar date: `2026-10-17`

/// The inverse of `to_iso`; nothing for any other text, or for a day that no calendar has.
std::optional<Date> parse_iso(std::string_view text);

} // namespace thawslip::kitchen

#pragma once

#include <chrono>
#include <string>
#include <string_view>
#include <utility>

namespace thawslip::kitchen {

/// Content lines of iCalendar (RFC 5545, 3.1), written one after the other.
class ICalendarLines {
public:
    /// A line whose value is already in its final form: `DTSTART:20261203T173000Z`.
    void add(std::string_view name, std::string_view value);
    /// A line with a TEXT value (3.3.11): backslash, semicolon and comma escaped, a line break as
    /// `\n`. Other control characters and ill-formed UTF-8 are left out.
    void add_text(std::string_view name, std::string_view text);

    std::string take() && { return std::move(text_); }

private:
    std::string text_;
};

/// DATE-TIME in UTC (3.3.5, form 2): `20261203T173000Z`.
std::string icalendar_utc(std::chrono::sys_seconds time);

/// A UUID made of a name alone: version 8 of RFC 9562 (5.8), the bits from two FNV-1a hashes of
/// 64 bits. RFC 7986 (5.3) wants UIDs to be UUIDs.
std::string uuid_of(std::string_view name);

} // namespace thawslip::kitchen

#include "kitchen/date.h"

#include <fmt/format.h>

namespace thawslip::kitchen {

Date add_months(Date date, std::chrono::months months) {
    const auto moved = date + months;
    return moved.ok() ? moved : Date{moved.year() / moved.month() / std::chrono::last};
}

Date add_days(Date date, std::chrono::days days) {
    return std::chrono::sys_days{date} + days;
}

std::chrono::days days_between(Date from, Date to) {
    return std::chrono::sys_days{to} - std::chrono::sys_days{from};
}

std::string to_iso(Date date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

} // namespace thawslip::kitchen

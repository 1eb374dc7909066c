#pragma once

#include "kitchen/date.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

/// What a list of days says of one: read from its text alone, however unfinished that is.
struct DaySummary {
    bool is_readable = false; ///< its lines are TOML, but for values
    bool is_day = false;      ///< it has a day or packages, or may have: it is not readable
    std::optional<kitchen::Date> made;
    std::vector<std::string> dishes;
    int bags = 0; ///< of all dishes, as far as it says
};

DaySummary summary_of(const std::string& text);

} // namespace thawslip::service

#include "app/figures_json.h"

#include <fmt/format.h>

namespace thawslip::app {

std::string thaw_members(const std::optional<kitchen::TimeRange>& thaw_time,
                         const std::optional<std::chrono::days>& cook_within) {
    std::string json;
    if (thaw_time) {
        json += fmt::format(R"(,"look_from_minutes":{},"thaw_minutes":{})", thaw_time->low.count(),
                            thaw_time->high.count());
    }
    if (cook_within) {
        json += fmt::format(R"(,"cook_within_days":{})", cook_within->count());
    }
    return json;
}

} // namespace thawslip::app

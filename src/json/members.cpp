#include "json/members.h"

#include <nlohmann/json.hpp>

namespace thawslip::json {

void add_thaw(Json& object, const std::optional<kitchen::TimeRange>& thaw_time,
              const std::optional<std::chrono::days>& cook_within) {
    if (thaw_time) {
        object["look_from_minutes"] = thaw_time->low.count();
        object["thaw_minutes"] = thaw_time->high.count();
    }
    if (cook_within) {
        object["cook_within_days"] = cook_within->count();
    }
}

} // namespace thawslip::json

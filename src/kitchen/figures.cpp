#include "kitchen/figures.h"

namespace thawslip::kitchen {

std::optional<TimeRange> thaw_time(const PlannedPackage& planned) {
    const auto lead = known_lead(planned.thaw_lead);
    if (!lead || planned.package.thaw.method == ThawMethod::FromFrozen ||
        planned.thaw_lead->decided_by == LeadBasis::CommonPractice) {
        return std::nullopt;
    }
    const bool looked_for = planned.package.thaw.method == ThawMethod::Refrigerator;
    return TimeRange{looked_for ? planned.thaw_lead->soonest : *lead, *lead};
}

std::optional<std::chrono::minutes> allowed_thaw(const PlannedPackage& planned) {
    const auto time = thaw_time(planned);
    return time ? std::optional{time->high} : std::nullopt;
}

std::optional<std::chrono::days> cook_within(const PlannedPackage& planned) {
    const auto& left = planned.after_thawing;
    return left && left->low > std::chrono::days{0} ? std::optional{left->low} : std::nullopt;
}

} // namespace thawslip::kitchen

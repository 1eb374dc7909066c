#pragma once

#include "kitchen/day.h"

#include <optional>
#include <vector>

namespace thawslip::kitchen {

/// How long after the start something goes in that is said to go in at `when`, for a dish that
/// cooks for `cooking`. "At serving" is the end of cooking; before the start counts as the start.
std::chrono::minutes time_from_start(When when, std::chrono::minutes cooking);

/// What becomes of moments that are one minute.
enum class Moments { NamedAlike, AsWritten };

/// The finishing ingredients in the order in which they go in; those of one moment stay as
/// written. Where the time of cooking is a range, its middle decides. Where none is known, what is
/// counted from the start comes first, then halfway, then what is counted back from the end.
/// Where it is one time, moments that are the same minute of it become one, the first of them,
/// unless they are to stay as they are written.
std::vector<Finish> in_order(std::vector<Finish> finish, const std::optional<TimeRange>& cooking,
                             Moments moments = Moments::NamedAlike);

} // namespace thawslip::kitchen

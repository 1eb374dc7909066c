#pragma once

#include "kitchen/timeline/lanes.h"
#include "wording/style.h"
#include "wording/time_chart.h"

#include <span>
#include <vector>

namespace thawslip::wording {

/// The stretches of a chart with their marks and what is written above them: how far the marks are
/// apart, and, where there are two stretches, that each has a scale of its own. Minutes count from
/// the begin of the first.
std::vector<TimeChart::Stretch> chart_stretches(std::span<const kitchen::Stretch> stretches,
                                                const kitchen::LocalClock& clock,
                                                const Style& style);

/// How a chart fills what a bag does for a while.
TimeChart::Fill fill_of(kitchen::Doing what);

/// What the fillings mean that occur in these lanes, in the order in which a bag goes through them.
std::vector<TimeChart::Key> chart_keys(std::span<const kitchen::Lane> lanes, const Style& style);

} // namespace thawslip::wording

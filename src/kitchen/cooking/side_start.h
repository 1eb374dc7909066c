#pragma once

#include "kitchen/plan.h"

#include <chrono>
#include <cstddef>
#include <vector>

namespace thawslip::kitchen {

/// When a side is started, so that it is ready when it is to be. The longest time that it may take
/// counts, as in the timeline: it waits rather than the table.
struct SideStart {
    enum class From {
        Serving, ///< so long before serving
        Start,   ///< so long after the dish starts to cook; below 0: before it
    };
    std::size_t side = 0; ///< index of the package's `sides`
    From from = From::Serving;
    std::chrono::minutes offset{0};
    friend bool operator==(const SideStart&, const SideStart&) = default;
};

/// The sides of a package in the order in which they are started.
std::vector<SideStart> side_starts(const PlannedPackage& planned);

/// Whether a side is started before what is done at `when`. Where no cooking time is known, what is
/// counted from the start comes before what is counted back from serving.
bool comes_before(const SideStart& start, When when, const PlannedPackage& planned);

/// Whether it is started before the dish is.
bool comes_before_dish(const SideStart& start, const PlannedPackage& planned);

} // namespace thawslip::kitchen

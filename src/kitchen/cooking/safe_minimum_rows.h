#pragma once

#include "kitchen/cooking/safe_minimum.h"

#include <span>

namespace thawslip::kitchen {

/// Every row of every publisher, one for a matter and list at most.
std::span<const SafeMinimum> minimum_rows();

} // namespace thawslip::kitchen

#pragma once

#include "kitchen/measures/quantity.h"

#include <optional>
#include <string_view>

namespace thawslip::kitchen {

/// The unit that a word names, singular or plural, in any letter case: "kg", "Tbsp", "litres".
/// Nothing for "fl" and other words that are no unit by themselves.
std::optional<Unit> unit_named(std::string_view word);

} // namespace thawslip::kitchen

#pragma once

#include "kitchen/day.h"
#include "toml/choice.h"

#include <span>

namespace thawslip::intake {

/// How a bag lies, and the words for it.
std::span<const toml::Choice<kitchen::Placing>> placings();

} // namespace thawslip::intake

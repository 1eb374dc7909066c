#pragma once

#include "kitchen/day.h"

#include <cstddef>
#include <optional>
#include <string_view>

namespace thawslip::kitchen {

/// Heat that warms food slowly, and where the cook names it.
struct GentleHeat {
    bool slow_cooker = false;
    std::optional<std::size_t> step; ///< nothing: `in` or `setting`
};

/// The gentle heat that vessel, setting or steps name: a low oven, a water bath, "keep warm", a
/// slow cooker in a step. An oven is low below 325 °F (USDA), which dials in Celsius mark as 160,
/// and after a hot start below 110 °C (ours). Nothing where food stays hot by all that is said.
std::optional<GentleHeat> gentle_heat(const Cook& cook);

/// Which of the appliances it is that share a slow cooker's rules: "slow cooker" where nothing says
/// otherwise, "water bath", "rice cooker", "haybox".
std::string_view slow_appliance(std::string_view in);

/// What has the strict rules of a slow cooker but neither its lid nor its settings: a water bath, a
/// rice cooker, a haybox.
bool is_no_slow_cooker(std::string_view in);
bool is_haybox(std::string_view in);

} // namespace thawslip::kitchen

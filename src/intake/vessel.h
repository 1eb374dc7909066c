#pragma once

#include "kitchen/day.h"

#include <optional>
#include <string>
#include <string_view>

namespace thawslip::intake {

/// The vessel meant by the free words of `in` and `setting`: "my big slow-cooker" and "Schongarer"
/// are slow cookers, a "Dutch oven" a pot. A multicooker is a pressure cooker where pressure is
/// named, else a slow cooker, as is anything that is set to cook slowly: its rules are the
/// strictest. `Other` where none of the words is known.
kitchen::Vessel vessel_of(std::string_view in, std::string_view setting = {});

/// An appliance that was probably meant by words that `vessel_of` does not know: "slow coker". Of
/// several the strictest.
struct NearVessel {
    std::string name;
    kitchen::Vessel vessel = kitchen::Vessel::Other;
};

/// A slip of the finger must not switch rules off: where a strict vessel is near, its rules hold.
std::optional<NearVessel> nearest_vessel(std::string_view in);

/// Whether something unknown is set and left as only a slow cooker is: low, high or warm, for
/// hours.
bool cooks_like_slow_cooker(const kitchen::Cook& cook);

} // namespace thawslip::intake

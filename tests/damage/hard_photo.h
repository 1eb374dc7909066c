#pragma once

#include "damage/photo.h"
#include "damage/winters.h"

#include <array>
#include <string_view>

namespace thawslip::damage {

/// What makes a photograph hard to read, beyond the hand that holds the camera.
enum class Hardship {
    Bottle,   ///< the label goes around a bottle of 52 to 80 mm
    FullBag,  ///< around a full bag of 90 to 140 mm
    Shadows,  ///< of fingers and folds, which take most of the light
    Blur,     ///< out of focus: a point becomes two thirds of a module wide, or more
    Together, ///< a full bag, in shadows, not quite in focus
};

struct NamedHardship {
    Hardship hardship;
    std::string_view name;
};
inline constexpr std::array<NamedHardship, 5> hardships = {{
    {Hardship::Bottle, "around a bottle"},
    {Hardship::FullBag, "around a full bag"},
    {Hardship::Shadows, "in shadows"},
    {Hardship::Blur, "out of focus"},
    {Hardship::Together, "bag, shadows, blur"},
}};

/// One photograph of a label as it came from the printer. Equal seeds are equal pictures.
Picture hard_photo(const Printed& code, Hardship hardship, Camera camera, std::uint64_t seed);

} // namespace thawslip::damage

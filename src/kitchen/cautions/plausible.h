#pragma once

#include "base/length.h"
#include "kitchen/day.h"

#include <optional>
#include <span>
#include <string_view>

namespace thawslip::kitchen {

/// A figure of a package that is asked about, or refused, where it is hardly meant.
enum class Figure {
    ServingWeight,   ///< g: the weight of a bag over its servings
    BagArea,         ///< cm²: one face of the bag, lying flat
    BagSteepness,    ///< its thickness over the side of that face, taken as a square
    Portions,        ///< servings times bags
    MadeDaysAgo,     ///< days from `made` to today
    UseByMonths,     ///< months from `made` to `use_by`
    MadeMonthsAhead, ///< months from today to `made`
    MadeMonthsAgo,   ///< months from `made` to today: beyond, it is refused
};

/// Between what a figure is taken as meant, both ends with it.
struct Bounds {
    Figure figure;
    double least;
    double most;
    std::string_view source;
};

/// One row for every Figure, in its order.
std::span<const Bounds> plausible_bounds();
const Bounds& bounds_of(Figure figure);

enum class Plausible { Yes, TooSmall, TooLarge };
Plausible hold_against_bounds(Figure figure, double value);

/// Grams of a bag over its servings; nothing where the weight is not known.
std::optional<double> serving_grams(const Package& package);

/// The face of a flat bag in cm², at 1050 kg/m³ as everywhere that a bag is reckoned with
/// (moist_dish of heat_properties.h); nothing where weight or thickness is not known.
std::optional<double> bag_area(const Package& package);

/// The side of that face in cm, were it a square.
std::optional<double> bag_side(const Package& package);
/// The thickness over that side: beyond 1 a bag is taller than wide, and does not lie flat.
std::optional<double> bag_steepness(const Package& package);

/// How thick a bag of this weight is at least, for its face to be no larger than the bounds say;
/// rounded up to whole millimetres.
Length least_thickness(Mass weight);

} // namespace thawslip::kitchen

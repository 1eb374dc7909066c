#include "kitchen/cautions/plausible.h"

#include "base/named.h"
#include "kitchen/heat/heat_properties.h"
#include "kitchen/sources.h"

#include <cmath>

namespace thawslip::kitchen {
namespace {

using enum Figure;

constexpr Bounds bounds[] = {
    // From a spoonful of sauce to more than a hungry adult eats.
    {ServingWeight, 40.0, 1500.0, practice},
    // From the palm of a hand to an A2 sheet, which no shelf of a household freezer takes.
    {BagArea, 40.0, 42.0 * 59.4, "common practice, no source; A2 by ISO 216, 2007"},
    // A cube, and a quarter more, for a bird or a roast is not a full block.
    {BagSteepness, 0.0, 1.25, practice},
    {Portions, 1.0, 500.0, practice},
    {MadeDaysAgo, 0.0, 365.0, practice},
    // No row of any list is longer than 18 months; two years are a slip of the keyboard.
    {UseByMonths, 0.0, 24.0, practice},
    {MadeMonthsAhead, 0.0, 24.0, practice},
    {MadeMonthsAgo, 0.0, 36.0, practice},
};

static_assert(rows_in_order(bounds, &Bounds::figure, MadeMonthsAgo));

/// g/cm³.
double density() {
    return moist_dish().density / 1000.0;
}

} // namespace

std::span<const Bounds> plausible_bounds() {
    return bounds;
}

const Bounds& bounds_of(Figure figure) {
    return bounds[static_cast<std::size_t>(figure)];
}

Plausible hold_against_bounds(Figure figure, double value) {
    const auto& row = bounds_of(figure);
    if (value < row.least)
        return Plausible::TooSmall;
    return value > row.most ? Plausible::TooLarge : Plausible::Yes;
}

std::optional<double> serving_grams(const Package& package) {
    if (!package.weight || package.servings < 1)
        return std::nullopt;
    return package.weight->grams / package.servings;
}

std::optional<double> bag_area(const Package& package) {
    if (!package.weight || !package.thickness)
        return std::nullopt;
    return package.weight->grams / density() / (package.thickness->in_millimetres() / 10.0);
}

std::optional<double> bag_side(const Package& package) {
    const auto area = bag_area(package);
    return area ? std::optional{std::sqrt(*area)} : std::nullopt;
}

std::optional<double> bag_steepness(const Package& package) {
    const auto side = bag_side(package);
    return side ? std::optional{package.thickness->in_millimetres() / 10.0 / *side} : std::nullopt;
}

Length least_thickness(Mass weight) {
    const double centimetres = weight.grams / density() / bounds_of(BagArea).most;
    return Length::millimetres(std::ceil(centimetres * 10.0));
}

} // namespace thawslip::kitchen

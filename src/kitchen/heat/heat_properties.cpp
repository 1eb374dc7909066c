#include "kitchen/heat/heat_properties.h"

#include <cmath>

namespace thawslip::kitchen {

namespace {

constexpr double fusion_of_ice = 333.6e3; // J/kg, at 0 °C
constexpr double freezable_share = 0.95;  // of the water; the rest stays bound to the food

/// Heat between 0 °C and −10 °C: cooling above the freezing point, the ice formed by −10 °C,
/// and cooling below, where the share Tf/T of the water is still liquid and counts as unfrozen.
double enthalpy_0_to_minus_10(const HeatProperties& food) {
    const double below = -food.freezing_point;                 // K below 0 °C
    const double liquid_span = below * std::log(10.0 / below); // ∫ Tf/T dT from Tf to −10 °C
    return food.heat_unfrozen * below + ice_at(food, -10.0) * fusion_of_ice +
           food.heat_frozen * (10.0 - below) +
           (food.heat_unfrozen - food.heat_frozen) * liquid_span;
}

} // namespace

HeatProperties moist_dish() {
    constexpr double water = 0.75;
    HeatProperties food{.water = water,
                        .density = 1050.0,
                        .freezing_point = -1.5,
                        .heat_unfrozen = 3500.0,
                        .heat_frozen = 2000.0,
                        .conductivity_unfrozen = 0.5,
                        .conductivity_frozen = 1.5,
                        .latent_heat = water * fusion_of_ice};
    food.enthalpy_0_to_minus_10 = enthalpy_0_to_minus_10(food);
    return food;
}

HeatProperties from_water_content(double water, double freezing_point) {
    const double solids = 1.0 - water;
    HeatProperties food{.water = water,
                        .density = 1050.0,
                        .freezing_point = freezing_point,
                        .heat_unfrozen = 4190.0 * water + 840.0 * solids,
                        .heat_frozen = 2100.0 * water + 840.0 * solids,
                        .conductivity_unfrozen = 0.55 * water + 0.26 * solids,
                        .conductivity_frozen = 2.4 * water + 0.26 * solids,
                        .latent_heat = 335e3 * water};
    food.enthalpy_0_to_minus_10 = enthalpy_0_to_minus_10(food);
    return food;
}

HeatProperties soup() {
    return from_water_content(0.88, -0.6);
}

double ice_at(const HeatProperties& food, double celsius) {
    return food.water * freezable_share * (1.0 - food.freezing_point / celsius);
}

HeatProperties slowest_food(Wetness wetness) {
    return wetness == Wetness::Dish ? moist_dish() : soup();
}

HeatProperties quickest_food(Wetness wetness) {
    return wetness == Wetness::Soup ? soup() : moist_dish();
}

} // namespace thawslip::kitchen

#include "kitchen/heat/heat_properties.h"

#include <cmath>
#include <doctest/doctest.h>

using namespace thawslip::kitchen;

TEST_CASE("a moist dish has the figures that were settled, written down a second time") {
    // Of the order of ASHRAE Handbook, Refrigeration, Thermal Properties of Foods, for foods of
    // three quarters water; the round figures are ours. Heat of fusion of ice 333.6 kJ/kg: the
    // same.
    const auto food = moist_dish();
    CHECK(food.density == 1050.0);
    CHECK(food.freezing_point == -1.5);
    CHECK(food.heat_unfrozen == 3500.0);
    CHECK(food.heat_frozen == 2000.0);
    CHECK(food.conductivity_unfrozen == 0.5);
    CHECK(food.conductivity_frozen == 1.5);
    CHECK(food.latent_heat == doctest::Approx(0.75 * 333.6e3));
}

TEST_CASE("a soup is 88 parts water in 100 and freezes at -0.6 °C") {
    // The five formulas at the end of Earle's Appendix 7: 4190 and 2100 J/(kg K) for water and ice,
    // 840 for solids; 0.55, 2.4 and 0.26 W/(m K); 335 kJ/kg. -0.6 °C: broccoli, ASHRAE Handbook,
    // Refrigeration, Thermal Properties of Foods, table 3.
    const auto food = soup();
    CHECK(food.density == 1050.0);
    CHECK(food.freezing_point == -0.6);
    CHECK(food.heat_unfrozen == doctest::Approx(0.88 * 4190 + 0.12 * 840));
    CHECK(food.heat_frozen == doctest::Approx(0.88 * 2100 + 0.12 * 840));
    CHECK(food.conductivity_unfrozen == doctest::Approx(0.88 * 0.55 + 0.12 * 0.26));
    CHECK(food.conductivity_frozen == doctest::Approx(0.88 * 2.4 + 0.12 * 0.26));
    CHECK(food.latent_heat == doctest::Approx(0.88 * 335e3));
}

TEST_CASE("the heat between 0 and -10 °C is what the ice and the cooling take, summed in steps") {
    // Another road to the same figure: the ice fraction 0.95 (1 - Tf/T) of the water, and the heat
    // of what is liquid and frozen, over ten thousand steps.
    const struct {
        HeatProperties food;
        double water;
    } foods[] = {{moist_dish(), 0.75}, {soup(), 0.88}};
    for (const auto& [food, water] : foods) {
        constexpr int steps = 10'000;
        double sum = 0;
        double ice = 0;
        for (int i = 0; i < steps; ++i) {
            const double below = 10.0 * (i + 0.5) / steps;
            const double liquid = below < -food.freezing_point ? 1 : -food.freezing_point / below;
            sum += (food.heat_unfrozen * liquid + food.heat_frozen * (1 - liquid)) * 10.0 / steps;
            ice = 0.95 * (1 - liquid);
        }
        CHECK(food.enthalpy_0_to_minus_10 ==
              doctest::Approx(sum + water * ice * 333.6e3).epsilon(1e-3));
    }
}

TEST_CASE("where it is not known how wet food is, the slower and the quicker stand for it") {
    const auto is_soup = [](const HeatProperties& food) { return food.freezing_point == -0.6; };
    CHECK_FALSE(is_soup(slowest_food(Wetness::Dish)));
    CHECK_FALSE(is_soup(quickest_food(Wetness::Dish)));
    CHECK(is_soup(slowest_food(Wetness::Soup)));
    CHECK(is_soup(quickest_food(Wetness::Soup)));
}

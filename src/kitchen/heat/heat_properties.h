#pragma once

#include <chrono>

namespace thawslip::kitchen {

/// A span of time as heat-transfer formulas give it, before anything is rounded.
using Seconds = std::chrono::duration<double>;

/// What a food is made of, as far as freezing and thawing ask. SI units; temperatures in °C.
struct HeatProperties {
    double water = 0.0;          ///< mass fraction, 0 to 1
    double density = 0.0;        ///< kg/m³
    double freezing_point = 0.0; ///< °C, where ice first forms
    double heat_unfrozen = 0.0;  ///< specific heat above the freezing point, J/(kg K)
    double heat_frozen = 0.0;    ///< specific heat of the frozen food without melting, J/(kg K)
    double conductivity_unfrozen = 0.0;  ///< W/(m K)
    double conductivity_frozen = 0.0;    ///< W/(m K)
    double latent_heat = 0.0;            ///< of all the water in the food, J/kg of food
    double enthalpy_0_to_minus_10 = 0.0; ///< heat given up between 0 °C and −10 °C, J/kg of food
};

/// A household dish of about 75 % water: stew, soup with body, sauce, raw meat.
///
/// Water 75 %, freezing point −1.5 °C, 1050 kg/m³ and the specific heats lie between the rows for
/// beef and vegetables in R. L. Earle and M. D. Earle, "Unit Operations in Food Processing" (web
/// edition, NZIFST), Appendix 7. Conductivities 0.5 and 1.5 W/(m K) are from memory, in line with
/// published worked examples. The enthalpy follows from ice_at() and 333.6 kJ/kg of ice.
HeatProperties moist_dish();

/// A soup, broth or thin stew of 88 % water, by from_water_content(), freezing at −0.6 °C. That is
/// what green beans and broccoli of 90 % do (−0.7, −0.6 °C: ASHRAE Handbook, Refrigeration, Thermal
/// Properties of Foods, table 3, read in a copy); salt lowers it, which shortens thawing.
HeatProperties soup();

/// The ice in a food below its freezing point, as a mass fraction of the food: 0.95 (1 − Tf/T) of
/// its water.
double ice_at(const HeatProperties& food, double celsius);

/// How much water a food holds, as far as it is known.
enum class Wetness {
    Dish,   ///< about 75 %
    Soup,   ///< about 88 %
    Either, ///< not known: as a soup for how long it takes, as a dish for how soon it may be done
};

/// The food that thaws and freezes slowest of what it may be, and the one that does so quickest.
HeatProperties slowest_food(Wetness wetness);
HeatProperties quickest_food(Wetness wetness);

/// Estimate from the water content alone, by the five formulas at the end of Earle's Appendix 7.
/// \param water mass fraction, 0 to 1
/// \param freezing_point °C, below 0
HeatProperties from_water_content(double water, double freezing_point);

/// What surrounds the food.
struct Surroundings {
    double celsius = 0.0;
    double coefficient = 0.0; ///< heat transfer at the food's surface, W/(m² K)
};

/// Why there is no freezing or thawing time.
enum class HeatFault {
    NoSuchSize,     ///< thickness or coefficient is not a positive number
    MediumTooCold,  ///< the surroundings would not thaw the food in useful time
    MediumTooWarm,  ///< they would not freeze it so far, or are too warm to thaw food in
    OutsideFormula, ///< a temperature lies outside what the formula was made for
};

} // namespace thawslip::kitchen

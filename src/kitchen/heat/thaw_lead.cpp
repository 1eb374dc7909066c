#include "kitchen/heat/thaw_lead.h"

#include "kitchen/heat/thaw_time.h"

#include <algorithm>
#include <cmath>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

constexpr double grams_per_pound = 453.59237; // exact, by definition
constexpr double longest_hours = 10'000.0;    // beyond any bag; keeps the arithmetic finite

/// What is known of a bag; a size that is not a positive number is not known.
struct BagSize {
    std::optional<Length> thickness;
    std::optional<Mass> weight;
};

BagSize usable(std::optional<Length> thickness, std::optional<Mass> weight) {
    if (thickness && !(*thickness > Length{}))
        thickness.reset();
    if (weight && !(weight->grams > 0.0))
        weight.reset();
    return {thickness, weight};
}

MissingSize missing_of(const BagSize& bag) {
    if (bag.thickness)
        return bag.weight ? MissingSize::None : MissingSize::Weight;
    return bag.weight ? MissingSize::Thickness : MissingSize::Both;
}

/// How many steps there are in `hours`; what is no number counts as the longest.
double steps_in(double hours, minutes step) {
    const double bounded = hours < longest_hours ? hours : longest_hours;
    return bounded * 60.0 / static_cast<double>(step.count());
}

// A figure that is a whole number of steps but for the last bits of its sum is one.
constexpr double last_bits = 1e-9;

minutes round_up(double hours, minutes step) {
    return step * static_cast<minutes::rep>(std::ceil(steps_in(hours, step) - last_bits));
}

minutes round_down(double hours, minutes step) {
    return step * static_cast<minutes::rep>(std::floor(steps_in(hours, step) + last_bits));
}

double refrigerator_rule_hours(std::optional<Mass> weight) {
    const double pounds = weight ? weight->grams / grams_per_pound : 0.0;
    return std::max(24.0, 24.0 * pounds / 4.0);
}

/// 1 h up to 1 lb, rising evenly to 3 h at 4 lb, and from there the longer of 3 h and 30 min/lb.
/// Without a weight, the 3 h of a 4 lb pack.
double water_rule_hours(std::optional<Mass> weight) {
    const double pounds = weight ? weight->grams / grams_per_pound : 4.0;
    if (pounds <= 4.0)
        return std::max(1.0, 1.0 + (pounds - 1.0) * 2.0 / 3.0);
    return std::max(3.0, pounds / 2.0);
}

/// Fills in the longer of the two figures, and both.
void take_the_longer(ThawLead& lead, std::optional<double> heat_hours, double agency_hours,
                     minutes step) {
    const minutes minute{1};
    if (heat_hours)
        lead.by_heat = round_up(*heat_hours, minute);
    lead.by_agency = round_up(agency_hours, minute);
    const bool heat_decides = heat_hours && *heat_hours > agency_hours;
    lead.decided_by = heat_decides ? LeadBasis::HeatTransfer : LeadBasis::AgencyRule;
    lead.lead = round_up(heat_decides ? *heat_hours : agency_hours, step);
}

/// A freezer warmer than −10 °C counts as one of −10 °C, which thaws no sooner.
double start_of(const ThawSettings& settings) {
    return std::min(settings.freezer_celsius, -10.0);
}

double litres_of(Mass weight, const HeatProperties& food) {
    return weight.grams / food.density;
}

double in_hours(Seconds time) {
    return time.count() / 3600.0;
}

/// What is reckoned with for the soonest where a size is not known.
constexpr double thin_millimetres = 15.0;
constexpr double small_litres = 0.5;
constexpr double soonest_without_thickness = 12.0;

/// Hours by heat transfer, at most; for an inch where the thickness is not known, so that settings
/// in which food does not thaw are found whatever is known of the bag.
Result<Seconds, HeatFault> slowest(const BagSize& bag, const ThawSettings& settings) {
    const auto food = slowest_food(settings.wetness);
    LyingBag lying{bag.thickness.value_or(Length::inches(1.0)), {}, settings.placing};
    if (bag.weight)
        lying.litres = litres_of(*bag.weight, food);
    return thaw_time_in_air(food, lying, Pace::Slowest, settings.refrigerator, start_of(settings));
}

Result<Seconds, HeatFault> quickest(const BagSize& bag, const ThawSettings& settings) {
    const auto food = quickest_food(settings.wetness);
    const LyingBag lying{bag.thickness.value_or(Length::millimetres(thin_millimetres)),
                         bag.weight ? litres_of(*bag.weight, food) : small_litres,
                         settings.placing};
    return thaw_time_in_air(food, lying, Pace::Quickest, settings.refrigerator, start_of(settings));
}

Result<ThawLead, HeatFault> in_refrigerator(const BagSize& bag, const ThawSettings& settings) {
    ThawLead lead{.method = ThawMethod::Refrigerator,
                  .placing = settings.placing,
                  .wetness = settings.wetness,
                  .missing = missing_of(bag)};
    constexpr std::chrono::hours step{1};
    const auto slow = slowest(bag, settings);
    const auto quick = quickest(bag, settings);
    if (!slow || !quick)
        return Failure{slow ? quick.fault() : slow.fault()};
    std::optional<double> at_most;
    if (bag.thickness)
        at_most = in_hours(slow.value()) * (1.0 + settings.margin);
    take_the_longer(lead, at_most, refrigerator_rule_hours(bag.weight), step);
    double soonest = in_hours(quick.value()) * (1.0 - settings.margin);
    if (!bag.thickness)
        soonest = std::min(soonest, soonest_without_thickness);
    lead.soonest = std::clamp<minutes>(round_down(soonest, step), minutes{0}, lead.lead);
    return lead;
}

/// Here the rim is left out: water warms the faces so well that the middle does not feel it.
Result<ThawLead, HeatFault> in_cold_water(const BagSize& bag, const ThawSettings& settings) {
    ThawLead lead{
        .method = ThawMethod::ColdWater, .wetness = settings.wetness, .missing = missing_of(bag)};
    const auto slab =
        thaw_time(slowest_food(settings.wetness), bag.thickness.value_or(Length::inches(1.0)),
                  settings.water, start_of(settings));
    if (!slab)
        return Failure{slab.fault()};
    std::optional<double> hours;
    if (bag.thickness)
        hours = in_hours(slab.value()) * (1.0 + settings.margin);
    take_the_longer(lead, hours, water_rule_hours(bag.weight), minutes{30});
    return lead;
}

/// The heat from freezer temperature to 0 °C over the oven's power.
Result<ThawLead, HeatFault> in_microwave(const BagSize& bag, const ThawSettings& settings) {
    ThawLead lead{
        .method = ThawMethod::Microwave, .wetness = settings.wetness, .missing = missing_of(bag)};
    if (!bag.weight) {
        lead.decided_by = LeadBasis::CommonPractice; // half an hour: common practice, no source
        lead.lead = minutes{30};
        return lead;
    }
    if (!(settings.microwave_watts > 0.0))
        return Failure{HeatFault::NoSuchSize};
    const auto food = slowest_food(settings.wetness);
    const double per_kilogram =
        food.enthalpy_0_to_minus_10 + food.heat_frozen * (-10.0 - settings.freezer_celsius);
    const double heat = per_kilogram * bag.weight->grams / 1000.0;
    const double hours = heat / settings.microwave_watts / 3600.0 * (1.0 + settings.margin);
    lead.decided_by = LeadBasis::HeatBalance;
    lead.by_heat = round_up(hours, minutes{1});
    lead.lead = round_up(hours, minutes{5});
    lead.missing = MissingSize::None; // the thickness plays no part
    return lead;
}

} // namespace

ThawSettings settings_for(const Package& package, Wetness wetness, ThawSettings kitchen) {
    kitchen.wetness = wetness;
    kitchen.placing = package.placing.value_or(kitchen.placing);
    return kitchen;
}

std::optional<std::chrono::minutes> known_lead(const std::optional<ThawLead>& lead) {
    return lead && lead->missing != MissingSize::Both ? std::optional{lead->lead} : std::nullopt;
}

Result<ThawLead, HeatFault> thaw_lead(ThawMethod method, std::optional<Length> thickness,
                                      std::optional<Mass> weight, const ThawSettings& settings) {
    const BagSize bag = usable(thickness, weight);
    switch (method) {
    case ThawMethod::Refrigerator: return in_refrigerator(bag, settings);
    case ThawMethod::ColdWater: return in_cold_water(bag, settings);
    case ThawMethod::Microwave: return in_microwave(bag, settings);
    case ThawMethod::FromFrozen: break;
    }
    return ThawLead{.method = ThawMethod::FromFrozen};
}

} // namespace thawslip::kitchen

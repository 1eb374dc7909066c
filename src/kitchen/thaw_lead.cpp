#include "kitchen/thaw_lead.h"

#include "kitchen/thaw_time.h"

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

/// Hours by heat transfer for a slab. A freezer warmer than −10 °C counts as one of −10 °C, which
/// thaws no sooner. Without a thickness the figure is that of an inch, so that settings in which
/// food does not thaw are found whatever is known of the bag.
Result<double, HeatFault> slab_hours(std::optional<Length> thickness, Surroundings medium,
                                     const ThawSettings& settings) {
    const auto slab = thaw_time(settings.food, thickness.value_or(Length::inches(1.0)), medium,
                                std::min(settings.freezer_celsius, -10.0));
    if (!slab)
        return Failure{slab.fault()};
    return slab.value().count() / 3600.0;
}

/// Where the thickness is not known, the soonest is that of a 1-inch steak, 12–14 h (an older
/// household table, publisher not known).
constexpr double soonest_without_thickness = 12.0;

Result<ThawLead, HeatFault> in_refrigerator(BagSize bag, const ThawSettings& settings) {
    ThawLead lead{.method = ThawMethod::Refrigerator, .missing = missing_of(bag)};
    constexpr std::chrono::hours step{1};
    const double agency = refrigerator_rule_hours(bag.weight);
    double litres = bag.weight ? bag.weight->grams / settings.food.density : 0.0;
    if (settings.faces == OpenFaces::One && bag.thickness) {
        // The bag is half of one twice as thick, whose middle plane passes no heat.
        *bag.thickness = *bag.thickness * 2.0;
        litres *= 2.0;
    }
    const auto hours = slab_hours(bag.thickness, settings.refrigerator, settings);
    if (!hours)
        return Failure{hours.fault()};
    if (!bag.thickness) {
        take_the_longer(lead, std::nullopt, agency, step);
        lead.soonest = round_down(soonest_without_thickness, step);
        return lead;
    }
    RimFactors rim;
    if (bag.weight)
        rim = rim_factors(settings.food, litres, *bag.thickness, settings.refrigerator.coefficient);
    take_the_longer(lead, hours.value() / rim.least * (1.0 + settings.margin), agency, step);
    const auto soonest = round_down(hours.value() / rim.most * (1.0 - settings.margin), step);
    lead.soonest = std::clamp(soonest, minutes{0}, lead.lead);
    return lead;
}

/// Here the rim is left out: water warms the faces so well that the middle does not feel it.
Result<ThawLead, HeatFault> in_cold_water(const BagSize& bag, const ThawSettings& settings) {
    ThawLead lead{.method = ThawMethod::ColdWater, .missing = missing_of(bag)};
    const auto slab = slab_hours(bag.thickness, settings.water, settings);
    if (!slab)
        return Failure{slab.fault()};
    std::optional<double> hours;
    if (bag.thickness)
        hours = slab.value() * (1.0 + settings.margin);
    take_the_longer(lead, hours, water_rule_hours(bag.weight), minutes{30});
    return lead;
}

/// The heat from freezer temperature to 0 °C over the oven's power.
Result<ThawLead, HeatFault> in_microwave(const BagSize& bag, const ThawSettings& settings) {
    ThawLead lead{.method = ThawMethod::Microwave, .missing = missing_of(bag)};
    if (!bag.weight) {
        lead.decided_by = LeadBasis::CommonPractice; // half an hour: common practice, no source
        lead.lead = minutes{30};
        return lead;
    }
    if (!(settings.microwave_watts > 0.0))
        return Failure{HeatFault::NoSuchSize};
    const double per_kilogram = settings.food.enthalpy_0_to_minus_10 +
                                settings.food.heat_frozen * (-10.0 - settings.freezer_celsius);
    const double heat = per_kilogram * bag.weight->grams / 1000.0;
    const double hours = heat / settings.microwave_watts / 3600.0 * (1.0 + settings.margin);
    lead.decided_by = LeadBasis::HeatBalance;
    lead.by_heat = round_up(hours, minutes{1});
    lead.lead = round_up(hours, minutes{5});
    lead.missing = MissingSize::None; // the thickness plays no part
    return lead;
}

} // namespace

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

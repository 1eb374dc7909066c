#include "kitchen/heat/core_course.h"

#include <algorithm>
#include <cmath>
#include <set>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

/// What one kelvin takes below the freezing point: c + A/T² + B/T, in J/(kg K).
struct FrozenHeat {
    double c = 0.0;
    double a = 0.0;
    double b = 0.0;
};

/// From the heat between 0 and −10 °C, of which all but the ice is known (heat_properties.cpp).
FrozenHeat frozen_heat(const HeatProperties& food) {
    const double below = -food.freezing_point;
    const double liquid_span = below * std::log(10.0 / below);
    const double melting = food.enthalpy_0_to_minus_10 - food.heat_unfrozen * below -
                           food.heat_frozen * (10.0 - below) -
                           (food.heat_unfrozen - food.heat_frozen) * liquid_span;
    return {food.heat_frozen, melting / (1.0 - below / 10.0) * below,
            -(food.heat_unfrozen - food.heat_frozen) * below};
}

/// The integral of core_course.h below the freezing point, at `celsius`.
double integral(const FrozenHeat& heat, double medium, double celsius) {
    const double of_ice = heat.a / (medium * medium) + heat.b / medium;
    return of_ice * std::log(-celsius) - (heat.c + of_ice) * std::log(medium - celsius) -
           heat.a / (medium * celsius);
}

/// How long it takes from the start to `celsius`, where u is 1.
class Course {
public:
    explicit Course(const Thawing& thawing)
        : thawing_{thawing}, heat_{frozen_heat(thawing.food)}, to_freezing_point_{frozen(
                                                                   thawing.food.freezing_point)},
          to_zero_{to_freezing_point_ +
                   thawing.food.heat_unfrozen *
                       std::log((thawing.medium - thawing.food.freezing_point) / thawing.medium)} {}

    double at(Seconds after) const {
        const double spent = std::max(after / thawing_.thawed, 0.0) * to_zero_;
        return spent < to_freezing_point_ ? while_melting(spent) : while_warming(spent);
    }

private:
    double frozen(double celsius) const {
        return integral(heat_, thawing_.medium, celsius) -
               integral(heat_, thawing_.medium, thawing_.start);
    }

    double while_melting(double spent) const {
        double low = thawing_.start;
        double high = thawing_.food.freezing_point;
        for (int halving = 0; halving < 40; ++halving) {
            const double middle = (low + high) / 2.0;
            (frozen(middle) <= spent ? low : high) = middle;
        }
        return low;
    }

    double while_warming(double spent) const {
        const double more = (spent - to_zero_) / thawing_.food.heat_unfrozen;
        return thawing_.medium * (1.0 - std::exp(-more));
    }

    const Thawing& thawing_;
    FrozenHeat heat_;
    double to_freezing_point_;
    double to_zero_;
};

/// As thaw_lead.cpp: a freezer warmer than −10 °C counts as one of −10 °C.
double start_in(const ThawSettings& settings) {
    return std::min(settings.freezer_celsius, -10.0);
}

/// The first of the two that may be thawed sooner; in water one figure is printed.
minutes soonest_of(const ThawLead& lead) {
    const auto soonest = lead.method == ThawMethod::Refrigerator ? lead.soonest : lead.lead;
    return std::max(soonest, minutes{1});
}

/// Where the course is looked at: evenly on the way to the end of the lead, and behind it.
std::set<minutes> moments(const ThawLead& lead, minutes until) {
    constexpr int on_the_way = 48;
    constexpr int behind = 16;
    std::set<minutes> all{soonest_of(lead), lead.lead};
    for (int i = 0; i <= on_the_way; ++i) {
        all.insert(lead.lead * i / on_the_way);
    }
    for (int i = 1; i <= behind && until > lead.lead; ++i) {
        all.insert(lead.lead + (until - lead.lead) * i / behind);
    }
    return all;
}

} // namespace

double core_celsius(const Thawing& thawing, Seconds after) {
    return Course{thawing}.at(after);
}

double medium_celsius(ThawMethod method, const ThawSettings& settings) {
    return method == ThawMethod::ColdWater ? settings.water.celsius : settings.refrigerator.celsius;
}

std::vector<CorePoint> core_course(const ThawLead& lead, const ThawSettings& settings,
                                   minutes until) {
    const bool has_course =
        lead.method == ThawMethod::Refrigerator || lead.method == ThawMethod::ColdWater;
    const double medium = medium_celsius(lead.method, settings);
    if (!has_course || !(medium > 0.0) || lead.lead <= minutes{0})
        return {};
    std::vector<CorePoint> points;
    for (const auto after : moments(lead, until)) {
        CorePoint point{after, medium, start_in(settings)};
        for (const auto& food : {slowest_food(settings.wetness), quickest_food(settings.wetness)}) {
            Thawing thawing{food, start_in(settings), medium, lead.lead};
            point.low = std::min(point.low, core_celsius(thawing, after));
            thawing.thawed = soonest_of(lead);
            point.high = std::max(point.high, core_celsius(thawing, after));
        }
        points.push_back(point);
    }
    return points;
}

} // namespace thawslip::kitchen

#include "kitchen/heat/thaw_ceiling.h"

#include "kitchen/heat/thaw_time.h"

#include <algorithm>
#include <cmath>

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

constexpr std::chrono::hours water_limit{4};
constexpr std::chrono::hours microwave_limit{2};

WarmFace in_water(const ThawLead& lead, Served served, const ThawSettings& settings) {
    const auto cold = std::chrono::floor<minutes>(
        face_stays_cold(quickest_food(settings.wetness), settings.water, 5.0));
    const auto warm = std::max(lead.lead - cold, minutes{0});
    if (served == Served::AsItIs)
        return {warm, minutes{0}};
    return {warm + handling, water_limit};
}

bool passes(ThawMethod method, std::optional<Length> thickness, std::optional<Mass> weight,
            Served served, const ThawSettings& settings) {
    const auto lead = thaw_lead(method, thickness, weight, settings);
    const auto face = lead ? warm_face(lead.value(), served, settings) : std::nullopt;
    return !face || face->warm <= face->limit;
}

/// The largest of `step`, 2 `step`, … up to `given` that passes.
template <class Passes>
std::optional<double> largest(double given, double step, Passes passes_with) {
    for (auto steps = std::lround(std::floor(given / step)); steps > 0; --steps) {
        const double size = static_cast<double>(steps) * step;
        if (passes_with(size))
            return size;
    }
    return std::nullopt;
}

} // namespace

Served served(const Package& package, const StorageTable& table) {
    if (is_eaten_frozen(table, package)) {
        return Served::Frozen;
    }
    const bool ready = std::ranges::any_of(package.food, [&](const std::string& food) {
        return kind_of(table, food) == FoodKind::ReadyToEat;
    });
    return ready && !package.cook ? Served::AsItIs : Served::Cooked;
}

std::optional<WarmFace> warm_face(const ThawLead& lead, Served served,
                                  const ThawSettings& settings) {
    switch (lead.method) {
    case ThawMethod::ColdWater: return in_water(lead, served, settings);
    case ThawMethod::Microwave: return WarmFace{lead.lead, microwave_limit};
    case ThawMethod::Refrigerator:
    case ThawMethod::FromFrozen: break;
    }
    return std::nullopt;
}

std::optional<PastCeiling> past_ceiling(ThawMethod method, std::optional<Length> thickness,
                                        std::optional<Mass> weight, Served served,
                                        const ThawSettings& settings) {
    const auto lead = thaw_lead(method, thickness, weight, settings);
    const auto face = lead ? warm_face(lead.value(), served, settings) : std::nullopt;
    if (!face || face->warm <= face->limit)
        return std::nullopt;
    PastCeiling past{lead.value(), *face, {}, {}};
    // Each by itself, with the other one as small as need be.
    if (thickness && !passes(method, thickness, std::nullopt, served, settings)) {
        const auto size = largest(thickness->in_millimetres(), 1.0, [&](double millimetres) {
            return passes(method, Length::millimetres(millimetres), std::nullopt, served, settings);
        });
        if (size)
            past.thickness = Length::millimetres(*size);
    }
    if (weight && !passes(method, std::nullopt, weight, served, settings)) {
        const auto size = largest(weight->grams, 100.0, [&](double grams) {
            return passes(method, std::nullopt, Mass{grams}, served, settings);
        });
        if (size)
            past.weight = Mass{*size};
    }
    return past;
}

} // namespace thawslip::kitchen

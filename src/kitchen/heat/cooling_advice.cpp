#include "kitchen/heat/cooling_advice.h"

#include "kitchen/heat/cooling_time.h"

namespace thawslip::kitchen {

namespace {

using std::chrono::minutes;

constexpr minutes longest_to_21 = std::chrono::hours{2};
constexpr minutes longest_to_5 = std::chrono::hours{6};

std::optional<minutes> rounded(std::optional<Seconds> time, double margin) {
    constexpr std::chrono::hours day{24};
    if (!time || *time * (1.0 + margin) > day)
        return std::nullopt;
    constexpr minutes step{5};
    const auto whole = std::chrono::ceil<minutes>(*time * (1.0 + margin));
    return (whole + step - minutes{1}) / step * step;
}

bool in_time(const CoolingSpans& spans) {
    return spans.to_21 && *spans.to_21 <= longest_to_21 && spans.to_5 &&
           *spans.to_5 <= longest_to_5;
}

/// One bag's cooling in whatever it is put into.
class Cooler {
public:
    Cooler(std::optional<Mass> weight, const ThawSettings& settings)
        : food_{slowest_food(settings.wetness)}, margin_{settings.margin} {
        if (weight && weight->grams > 0.0)
            litres_ = weight->grams / food_.density;
    }

    CoolingSpans spans(Length thickness, Placing placing, const CoolingMedium& medium) const {
        const auto marks = cooling_marks(food_, {thickness, litres_, placing}, medium);
        return {rounded(marks.to_21, margin_), rounded(marks.to_5, margin_)};
    }

    Length thickest_in_ice() const {
        // From below: of a given weight, what is taller than wide cools sooner again.
        int millimetres = 1;
        while (in_time(spans(Length::millimetres(millimetres + 1), Placing::Rack, ice_water())))
            ++millimetres;
        return Length::millimetres(millimetres);
    }

private:
    HeatProperties food_;
    double margin_;
    std::optional<double> litres_;
};

CoolingWay way_of(const CoolingAdvice& advice) {
    if (in_time(advice.as_placed))
        return CoolingWay::AsPlaced;
    if (in_time(advice.on_rack))
        return CoolingWay::OnRack;
    return in_time(advice.in_ice_water) ? CoolingWay::IceWater : CoolingWay::BeforeBags;
}

} // namespace

std::optional<CoolingAdvice> cooling_advice(std::optional<Length> thickness,
                                            std::optional<Mass> weight,
                                            const ThawSettings& settings) {
    if (!thickness || !(*thickness > Length{}))
        return std::nullopt;
    const Cooler cooler{weight, settings};
    const auto air = refrigerator_air(settings.refrigerator.celsius);
    CoolingAdvice advice;
    advice.placing = settings.placing;
    advice.as_placed = cooler.spans(*thickness, settings.placing, air);
    advice.on_rack = cooler.spans(*thickness, Placing::Rack, air);
    advice.in_ice_water = cooler.spans(*thickness, Placing::Rack, ice_water());
    advice.way = way_of(advice);
    if (advice.way == CoolingWay::BeforeBags)
        advice.thickest_in_ice = cooler.thickest_in_ice();
    return advice;
}

} // namespace thawslip::kitchen

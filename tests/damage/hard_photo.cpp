#include "damage/hard_photo.h"

#include <numbers>

namespace thawslip::damage {
namespace {

/// A label sits upright on what it is wrapped around, or lies along it, by eye.
double some_axis(Random& random) {
    const double askew = random.between(-0.12, 0.12);
    return askew + (random.chance(2) ? std::numbers::pi / 2.0 : 0.0);
}

void wrap(Photography& how, double least, double most, Random& random) {
    how.cylinder = random.between(least, most);
    how.axis = some_axis(random);
    how.crest = random.between(-8.0, 8.0);
    how.curl = 0.0;
}

Photography hard_photography(Hardship hardship, Camera camera, Random& random) {
    auto how = some_photography(camera, random);
    switch (hardship) {
    case Hardship::Bottle: wrap(how, 26.0, 40.0, random); break;
    case Hardship::FullBag: wrap(how, 45.0, 70.0, random); break;
    case Hardship::Shadows: how.blotches = random.between(0.6, 0.9); break;
    case Hardship::Blur: how.blur = how.pixels_per_mm * random.between(0.20, 0.33); break;
    case Hardship::Together:
        wrap(how, 45.0, 70.0, random);
        how.blotches = random.between(0.4, 0.7);
        how.blur = how.pixels_per_mm * random.between(0.12, 0.2);
        break;
    }
    return how;
}

} // namespace

Picture hard_photo(const Printed& code, Hardship hardship, Camera camera, std::uint64_t seed) {
    Random random{seed};
    const auto printing = some_printing(code.dots_per_inch, random);
    const auto label = printed(code.symbol, code.module_mm, printing, random);
    const auto how = hard_photography(hardship, camera, random);
    return photographed(label.paper, paper_scale, how, random);
}

} // namespace thawslip::damage

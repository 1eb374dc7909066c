#include "damage/winters.h"

#include "damage/readers.h"
#include "damage/winter.h"

namespace thawslip::damage {
namespace {

void harm(Label& label, Winter winter, Random& random) {
    constexpr double some_grains = 0.005;
    constexpr double many_grains = 0.02;
    if (winter == Winter::None) {
        return;
    }
    if (winter != Winter::Frost) {
        scuff(label, 2.0, 0.3, random);
    }
    if (winter == Winter::FrostCrease) {
        crease(label, random);
    }
    if (winter == Winter::TenthSmeared || winter == Winter::WetCorner) {
        smear(label, 1.0 / 10.0, random);
    }
    if (winter == Winter::SixthSmeared) {
        smear(label, 1.0 / 6.0, random);
    }
    if (winter == Winter::WetCorner) {
        wet_corner(label, 0.25, random);
    }
    frost(label, winter == Winter::HardFrost ? many_grains : some_grains, 0.3, random);
}

} // namespace

Readers read_after(const Printed& code, const Trial& trial, std::uint64_t seed) {
    Random random{seed};
    const Printing printing = some_printing(code.dots_per_inch, random);
    Label label = printed(code.symbol, code.module_mm, printing, random);
    harm(label, trial.winter, random);
    Readers readers;
    const auto done = [&] {
        return readers.zxing && (readers.zbar || trial.ask == Ask::ZXingOnly);
    };
    for (int frame = 0; frame < frames && !done(); ++frame) {
        const Picture picture =
            photographed(label.paper, paper_scale, some_photography(trial.camera, random), random);
        readers.zxing = readers.zxing || zxing_reads(picture, code.text);
        readers.zbar = readers.zbar || (trial.ask == Ask::Both && zbar_reads(picture, code.text));
    }
    return readers;
}

} // namespace thawslip::damage

#include "damage/print.h"

#include <algorithm>
#include <cmath>

namespace thawslip::damage {
namespace {

constexpr double white = 0.85; ///< reflectance of uncoated label paper
constexpr double margin = 4.0; ///< mm of label around the quiet zone

/// Is the point (x, y), in modules, inked when ink grows by `gain` modules over every edge?
bool inked(const code::Symbol& symbol, double x, double y, double gain) {
    const auto dark = [&](double px, double py) {
        const int column = static_cast<int>(std::floor(px));
        const int row = static_cast<int>(std::floor(py));
        const bool inside = column >= 0 && row >= 0 && column < symbol.side && row < symbol.side;
        return inside && symbol.dark[static_cast<std::size_t>(row * symbol.side + column)];
    };
    const bool here = dark(x, y);
    if ((gain >= 0.0) == here) {
        return here;
    }
    const double reach = std::abs(gain);
    for (const double dx : {-reach, 0.0, reach}) {
        for (const double dy : {-reach, 0.0, reach}) {
            if (dark(x + dx, y + dy) != here) {
                return !here;
            }
        }
    }
    return here;
}

/// Bars as long as words, in lines, up to the quiet zone: what a reader sees beside a code.
void set_words(Label& label, double quiet_zone, double ink, Random& random) {
    const int end = static_cast<int>((label.code.x - quiet_zone) * paper_scale);
    for (int top = 6; top + 18 < label.paper.height(); top += 36) {
        const int start = static_cast<int>(random.below(16));
        for (int y = top; y < top + 18; ++y) {
            for (int x = start; x < end; ++x) {
                label.paper.at(x, y) = x / 4 % 2 == 0 ? ink : white;
            }
        }
    }
}

} // namespace

Label printed(const code::Symbol& symbol, double module_mm, const Printing& printing,
              Random& random) {
    const double quiet_zone = code::quiet_zone_modules * module_mm;
    const double code_side = symbol.side * module_mm;
    const double start = margin + quiet_zone;
    const int pixels = static_cast<int>(std::ceil((code_side + 2.0 * start) * paper_scale));
    Label label{Raster{pixels, pixels, white}, {start, start}, code_side};
    const Landscape edges{random, 25.4 / printing.dots_per_inch};
    const Landscape blotches{random, 1.5};
    for (int y = 0; y < pixels; ++y) {
        for (int x = 0; x < pixels; ++x) {
            const Spot spot{(x + 0.5) / paper_scale, (y + 0.5) / paper_scale};
            const double wander = (2.0 * edges.at(spot) - 1.0) * printing.raggedness;
            const double gain = (printing.dot_gain + wander) / module_mm;
            if (inked(symbol, (spot.x - start) / module_mm, (spot.y - start) / module_mm, gain)) {
                const double missing = printing.blotches * blotches.at(spot);
                label.paper.at(x, y) = printing.ink + (white - printing.ink) * missing;
            }
        }
    }
    set_words(label, quiet_zone, printing.ink, random);
    return label;
}

Printing some_printing(double dots_per_inch, Random& random) {
    Printing printing;
    printing.dots_per_inch = dots_per_inch;
    const double dot = 25.4 / dots_per_inch;
    printing.dot_gain = random.between(-0.25, 0.5) * dot;
    printing.raggedness = random.between(0.1, 0.4) * dot;
    printing.ink = random.between(0.05, 0.2);
    printing.blotches = random.chance(4) ? random.between(0.2, 0.5) : 0.1; // faint toner
    return printing;
}

} // namespace thawslip::damage

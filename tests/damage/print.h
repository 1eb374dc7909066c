#pragma once

#include "code/symbol.h"
#include "damage/raster.h"

namespace thawslip::damage {

/// How finely a label is modelled: pixels per millimetre of paper.
inline constexpr double paper_scale = 12.0;

/// A label with its code, as it lies on the table: reflectance, `paper_scale` pixels to the mm.
struct Label {
    Raster paper;
    Spot code;              ///< top left corner of the code's first module, mm
    double code_side = 0.0; ///< without the quiet zone, mm
};

/// What a printer makes of black and white.
struct Printing {
    double dots_per_inch = 300.0;
    double dot_gain = 0.0;   ///< mm by which ink grows over each edge; negative: it falls short
    double raggedness = 0.0; ///< mm by which an edge wanders, from dot to dot
    double ink = 0.08;       ///< reflectance of solid ink
    double blotches = 0.0;   ///< how much of the ink is missing where toner is faintest, 0 to 1
};

/// The code in its quiet zone on a label, with words on the left as a label has them.
Label printed(const code::Symbol& symbol, double module_mm, const Printing& printing,
              Random& random);

/// A printing by one of the printers at home or in an office: clean, fat, thin or faint.
Printing some_printing(double dots_per_inch, Random& random);

} // namespace thawslip::damage

#pragma once

#include "base/length.h"
#include "kitchen/day.h"
#include "kitchen/settings.h"
#include "kitchen/unit_style.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::kitchen {

/// One number with its unit. A mass in pounds and ounces takes two: 4 lb, 14 oz.
struct Measure {
    Amount amount;
    Unit unit = Unit::Count;
    friend bool operator==(const Measure&, const Measure&) = default;
};

/// The same in the other system, as cooks write it: 1 l is 4¼ cups, 2.2 kg is 4 lb 14 oz,
/// 1 cup is 240 ml. The roundest number within 2.5 %, or, where none is, the nearest that a
/// spoon, cup or scale shows. Nothing for counts and spoons, which both systems share, and for
/// amounts too small to convert with sense (under 7 g).
std::vector<Measure> in_other_system(Measure measure, Measures measures);

/// `4¼ cups`, `4 lb 14 oz`, `2.2 kg`, in English. Metric amounts as decimals, others as
/// fractions.
std::string to_text(const std::vector<Measure>& measures, char decimal_mark = '.');

/// The amount and, by the style, the same in the other system, then the item:
/// `1 l (4¼ cups) vegetable stock`. A quantity that cannot be converted stays as written.
std::string to_text(const Quantity& quantity, const UnitStyle& style);

std::string to_text(Mass mass, const UnitStyle& style);            ///< `2.2 kg (4 lb 14 oz)`
std::string thickness_text(Length length, const UnitStyle& style); ///< `30 mm (1⅛ in)`

} // namespace thawslip::kitchen

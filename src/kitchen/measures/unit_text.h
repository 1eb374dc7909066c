#pragma once

#include "base/length.h"
#include "kitchen/day.h"
#include "kitchen/measures/unit_style.h"
#include "kitchen/settings.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::kitchen {

/// One number with its unit. A mass in pounds and ounces, or a volume in cups and spoons, takes
/// two: 4 lb, 14 oz.
struct Measure {
    Amount amount;
    Unit unit = Unit::Count;
    friend bool operator==(const Measure&, const Measure&) = default;
};

/// The same in the other system, as cooks write it: 1 l is 4¼ cups, 150 ml is ½ cup 2 tbsp, 2.2 kg
/// is 4 lb 14 oz, 1 cup is 240 ml. The roundest number within 2.5 %, or, where none is, the nearest
/// that spoons, cups or a scale show. Nothing for counts and spoons, which both systems share, and
/// for amounts too small to convert with sense (under 7 g).
std::vector<Measure> in_other_system(Measure measure, Measures measures);

/// `4¼ cups`, `4 lb 14 oz`, `2.2 kg`: the units' names, and the decimal mark, of the style.
/// Metric amounts as decimals, others as fractions.
std::string to_text(const std::vector<Measure>& measures, const UnitStyle& style = {});

/// The amount and, by the style, the same in the other system, then the item:
/// `1 l (4¼ cups) vegetable stock`, `4 lb 14 oz (2.25 kg) pork`. A quantity that cannot be
/// converted stays as written; a sum, which nobody wrote, is written out.
std::string to_text(const Quantity& quantity, const UnitStyle& style);

/// The amount of such a text and its item apart, as the columns of a table take them. Where they
/// cannot be parted ("salt to taste"), the item is all of it.
struct AmountAndItem {
    std::string amount;
    std::string item;
};
AmountAndItem amount_and_item(const Quantity& quantity, const UnitStyle& style);
/// The same of a rounded quantity: in the other system it is as much as `exact`, which it was
/// rounded from, so that what was rounded once is not rounded further.
AmountAndItem amount_and_item(const Quantity& quantity, const Quantity& exact,
                              const UnitStyle& style);

std::string to_text(Mass mass, const UnitStyle& style);            ///< `2.2 kg (4 lb 14 oz)`
std::string thickness_text(Length length, const UnitStyle& style); ///< `30 mm (1⅛ in)`

} // namespace thawslip::kitchen

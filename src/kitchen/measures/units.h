#pragma once

#include "kitchen/measures/quantity.h"
#include "kitchen/settings.h"

#include <optional>

namespace thawslip::kitchen {

enum class Dimension { Count, Mass, Volume };

Dimension dimension(Unit unit);

/// Whether a unit belongs to the metric system. Spoons and cups belong to neither.
bool is_metric(Unit unit);

/// How many grams or millilitres one `unit` is, exactly; one for Count.
///
/// Pound and ounce: 0.45359237 kg (international yard and pound agreement, 1959; NIST SP 811).
/// US gallon: 231 cubic inches; its parts halve down to the tablespoon, of which a teaspoon is
/// a third (NIST Handbook 44, appendix C). Metric cup 250 ml, tablespoon 15 ml, teaspoon 5 ml;
/// Australian cup 250 ml, tablespoon 20 ml, teaspoon 5 ml (common practice; Standards Australia).
/// Imperial gallon 4.54609 l (UK Units of Measurement Regulations 1995), 160 fluid ounces; its
/// cup is 10 of them, its spoons are metric. The metric and Australian drawers, which have no
/// pint of their own, take the imperial one.
Amount factor(Unit unit, Measures measures);

/// `amount` of `from`, in `to`, exactly. Nothing when one weighs and the other measures, or when
/// the exact fraction needs more than 63 bits.
std::optional<Amount> convert(Amount amount, Unit from, Unit to, Measures measures);

/// The product in lowest terms; nothing where it needs more than 63 bits. \pre denominators > 0
std::optional<Amount> multiply(Amount a, Amount b);

/// The fraction in lowest terms. \pre denominator > 0
Amount in_lowest_terms(Amount amount);

} // namespace thawslip::kitchen

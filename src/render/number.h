#pragma once

#include <string>

namespace thawslip::render {

constexpr int length_decimals = 3; ///< of points: sizes of type, rules and boxes
constexpr int matrix_decimals = 6; ///< what is multiplied by the size of a sheet or a symbol

/// Appends `value` as PDF, SVG and people read it: rounded to at most `decimals` digits after the
/// point, no zeros at the end, no exponent, never "-0", and the same in every locale.
/// \pre `decimals` is from 0 to 9
/// \throws std::domain_error for what no sheet has: infinities, NaN, 10⁹ and beyond
void append_number(std::string& out, double value, int decimals);

/// The same with exactly `decimals` digits after the point, so that columns line up.
std::string fixed(double value, int decimals);

/// Appends a whole number.
void append_whole(std::string& out, long long value);

} // namespace thawslip::render

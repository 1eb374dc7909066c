#pragma once

#include "damage/winters.h"

#include <cstddef>
#include <string>
#include <vector>

namespace thawslip::damage {

/// Where a code is to go and how much it is to say.
struct Situation {
    std::size_t characters = 200;
    double room_mm = 36.0; ///< a square, quiet zone included
    double dots_per_inch = 300.0;
};

/// A label's text cut off at so many characters (about 440 at most).
std::string instructions(std::size_t characters);

/// One code for each error-correction level: the smallest version, as large as the room allows in
/// whole dots. Without those whose modules would be under `least_mm`.
std::vector<Printed> candidates(const Situation& situation, double least_mm);

/// Which of the candidates `choose_symbol` picks; past the end when there is none.
std::size_t chosen(const std::vector<Printed>& candidates, const Situation& situation,
                   double least_mm);

} // namespace thawslip::damage

#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

#include <string>

namespace thawslip::wording {

std::string say_litres(double litres, const Style& style); ///< "27 l (1 cu ft)"

/// "42 cm (17 in)": how high something stands, rounded up to whole ones.
std::string say_height(Length height, const Style& style);

/// "4 bags of this are in the freezer"; empty where none is, as far as is known.
std::string say_in_freezer(const kitchen::PlannedPackage& planned, const Style& style);

/// What the day's bags need in the freezer, a line for each thing to know, with a head of its own.
void add_room(Field& field, const kitchen::Plan& plan, const Style& style);

} // namespace thawslip::wording

#pragma once

#include "kitchen/allergens/allergens.h"
#include "kitchen/day.h"

#include <vector>

namespace thawslip::kitchen {

/// The allergens that the words of what is added or cooked beside it on cook day name; each once
/// for every addition.
std::vector<DeclaredAllergen> added_allergens(const Package& package);

/// The allergens that the words of what is added or cooked beside it on cook day name, where `list`
/// asks for them or the cook declares them for the dish; each once for every addition. Where the
/// words name none nothing is known: what is in a stock cube is not said.
std::vector<DeclaredAllergen> added_allergens(const Package& package,
                                              const std::vector<DeclaredAllergen>& declared,
                                              const AllergenList& list);

} // namespace thawslip::kitchen

#pragma once

#include "kitchen/day.h"
#include "kitchen/foods/food_senses.h"
#include "kitchen/storage/storage.h"

#include <vector>

namespace thawslip::kitchen {

/// An ingredient that is made ready before the packing day and keeps no better than cooked food
/// does.
struct PartAhead {
    const Ingredient* ingredient = nullptr; ///< of the package that was asked about
    FoodChoice kinds; ///< what its words name; empty: cooked, or not known what it is
};

/// The ingredients for the day before that count as chilled food: what is cooked, what spoils, and
/// what no word is known of. Raw vegetables, fruit, herbs, pulses and grain do not count.
std::vector<PartAhead> parts_ahead(const StorageTable& table, const Package& package);

/// On which day an ingredient is bought and made ready: of a dish that is made on the day before,
/// all that goes into its bags is for that day.
IngredientDay day_of(const Ingredient& ingredient, const Package& package,
                     std::optional<Date> prepared);

/// The package with the days that it, or a part of it, is chilled from Day::prepared to the packing
/// day in `days_refrigerated`, where that says less.
Package with_days_ahead(const Package& package, const Day& day, const StorageTable& table);

} // namespace thawslip::kitchen

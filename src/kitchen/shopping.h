#pragma once

#include "kitchen/day.h"
#include "kitchen/settings.h"

#include <span>
#include <vector>

namespace thawslip::kitchen {

/// One line of a shopping list. Amounts are exact: ⅓ cup and ⅔ cup are one cup.
struct ShoppingItem {
    Quantity total;          ///< with its item; `as_written` is empty where it is a sum
    std::vector<int> dishes; ///< what it is for: numbers of packages as given, from 1, each once
};

struct ShoppingList {
    std::vector<ShoppingItem> for_day_before; ///< what is made ready before the packing day
    std::vector<ShoppingItem> for_the_day;    ///< what goes into the bags
    std::vector<ShoppingItem> for_cook_day;   ///< what is added later or eaten with it
};

/// What a day needs. Ingredients are taken as written for the whole dish, in all its sizes;
/// finishing ingredients and sides are for one bag, so they count as many times as there are bags.
///
/// Two quantities become one line only where nothing is lost by it: the same item, letter for
/// letter but for capitals, accents and plurals; no qualifier ("heaping"); both measured by weight,
/// both by volume, or both counted. Then both ends of a range are added, in the unit of the first.
/// 200 g and 1 cup of flour stay two lines, and so do flour and plain flour. Sums that need more
/// than 63 bits stay apart.
ShoppingList shopping(std::span<const Package> packages, Measures measures);

} // namespace thawslip::kitchen

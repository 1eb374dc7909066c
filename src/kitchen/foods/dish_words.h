#pragma once

#include "kitchen/day.h"
#include "kitchen/storage/storage.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::kitchen {

// What the dish, and the ingredients that go into the bag, are said to be.

/// What has another food inside, and where the cook's words say so.
struct Filled {
    bool stuffed = false; ///< stuffed like a roast or a bird; else only rolled or wrapped around it
    std::string written;
    KeyPath where;
};

/// Stuffed or wrapped food in the bag: "stuffed loin", "mit Pflaumenfüllung", "ravioli"; and not
/// "without stuffing", "stuffing in its own bag", "stuffed olives", "pie filling". The note counts
/// too.
std::optional<Filled> filled_in(const Package& package);

bool names_soup(const Package& package); ///< the dish's name: "crema de puerros", "gazpacho"
bool names_rice(const Package& package); ///< dish or ingredients in the bag: "paella", "-reis"

/// The kinds of food as far as they count while chilled: cooked rice in a dish is rice, which lists
/// give less time (UK Food Standards Agency: 24 hours).
std::vector<std::string> foods_kept_chilled(const StorageTable& table, const Package& package);

} // namespace thawslip::kitchen

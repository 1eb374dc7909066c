#pragma once

#include "service/messages.h"

#include <cstddef>
#include <set>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// Whether each of `words` begins a word of a name, of a dish or a place, accents and capitals
/// aside: as bags are found in the freezer.
bool has_words(std::string_view name, std::string_view words);

/// Whether `words` are all of a name, in its order, commas, accents and capitals aside.
bool are_all_of(std::string_view words, std::string_view name);

/// Which dish was probably meant by words that none has, or which come near, at most three: as
/// hints, none where there is no dish.
std::vector<std::string> near_dishes(std::string_view words, std::span<const std::string> dishes);

/// That fewer bags of a dish are there than are wanted: "only 2 of 5 bags of \"Leek soup\" are
/// there". \param serves how many one serves, where the dish is in sizes; else 0
std::string too_few_bags(std::size_t there, int wanted, std::string_view dish, int serves);

/// That no dish has the words, and which come near.
Messages no_such_dish(std::string_view words, std::span<const std::string> dishes);

/// The names of the dishes that words mean, a comma between several dishes unless one is called so:
/// where words are a dish's whole name, that dish alone. What no dish has is said.
std::set<std::string> dishes_meant(const std::string& words, std::span<const std::string> names,
                                   Messages& messages);

} // namespace thawslip::service

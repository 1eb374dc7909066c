#pragma once

#include "service/messages.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// Whether each of `words` begins a word of the dish, accents and capitals aside: as bags are
/// found in the freezer.
bool is_dish_meant(std::string_view dish, std::string_view words);

/// What stands between the commas of a text, without blanks at the ends; nothing empty.
std::vector<std::string> parts_between_commas(std::string_view text);

/// That no dish has the words, and which come near: at most three.
Messages no_such_dish(std::string_view words, std::span<const std::string> dishes);

} // namespace thawslip::service

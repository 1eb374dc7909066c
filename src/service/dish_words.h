#pragma once

#include "service/messages.h"

#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// Whether each of `words` begins a word of a name, of a dish or a place, accents and capitals
/// aside: as bags are found in the freezer.
bool has_words(std::string_view name, std::string_view words);

/// That no dish has the words, and which come near: at most three.
Messages no_such_dish(std::string_view words, std::span<const std::string> dishes);

} // namespace thawslip::service

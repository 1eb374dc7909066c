#pragma once

#include "json/json.h"

#include <string_view>

namespace thawslip::desk {

/// The page's own words in a language: one of wording::shipped_languages().
json::Json page_words(std::string_view language);

} // namespace thawslip::desk

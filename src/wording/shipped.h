#pragma once

#include <string_view>

namespace thawslip {

/// The files of src/wording/lang/, compiled in by thawslip_embed.
extern const std::string_view english_words;
extern const std::string_view spanish_words;
extern const std::string_view german_words;

} // namespace thawslip

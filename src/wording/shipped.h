#pragma once

#include <string_view>

namespace thawslip {

/// goods.toml and the files of lang/, compiled in by thawslip_embed.
extern const std::string_view goods_words;
extern const std::string_view english_words;
extern const std::string_view spanish_words;
extern const std::string_view spanish_of_americas_words;
extern const std::string_view german_words;

} // namespace thawslip

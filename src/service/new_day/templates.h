#pragma once

#include <string_view>

namespace thawslip {

// src/service/new_day/{en,es,de}.toml, compiled in by thawslip_embed: a sample day, and below a
// line
// `@BLANK@` the head and the block of a day to be filled in.
extern const std::string_view new_day_en;
extern const std::string_view new_day_es;
extern const std::string_view new_day_de;

} // namespace thawslip

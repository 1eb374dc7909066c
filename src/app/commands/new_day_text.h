#pragma once

#include <string_view>

namespace thawslip {

/// src/app/new_day.toml, compiled in by thawslip_embed.
extern const std::string_view new_day_text;

} // namespace thawslip

#pragma once

#include <string_view>

namespace thawslip::kitchen {

// Publications that rules of several files rest on, as those cite them.

inline constexpr std::string_view practice = "common practice, no source";
inline constexpr std::string_view slow_cooker_safety =
    "USDA FSIS, Slow Cookers and Food Safety (read in a copy)";
inline constexpr std::string_view bean_source =
    "FDA, Bad Bug Book, phytohaemagglutinin; Food Safety Information Council (Australia), Slow "
    "cookers";
inline constexpr std::string_view safe_defrosting =
    "USDA FSIS, The Big Thaw: Safe Defrosting Methods, 2013";

} // namespace thawslip::kitchen

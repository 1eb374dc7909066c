#pragma once

#include "service/settings.h"

#include <cstddef>
#include <string>

namespace thawslip::app {

using service::Settings;

/// What a file of settings has at most, in bytes.
inline constexpr std::size_t largest_settings = std::size_t{1} << 18U;

/// The file under $XDG_CONFIG_HOME, or under ~/.config where that is not set (XDG Base Directory
/// Specification, 0.8). Empty where neither is known.
std::string usual_settings_file();

/// Reads `file`; a missing file is the defaults, unless it was named by hand.
enum class Missing { IsFine, IsAFault };
service::Outcome<Settings> load_settings(const std::string& file, Missing missing);

} // namespace thawslip::app

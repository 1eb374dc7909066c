#pragma once

#include <string>

namespace thawslip::app {

/// 128 bits that nobody can guess, as 32 digits and letters: from the system's own source
/// (getrandom(2)). \throws SystemFailure where it has none
std::string random_text();

/// Whether a text looks like one of those.
bool is_random_text(const std::string& text);

} // namespace thawslip::app

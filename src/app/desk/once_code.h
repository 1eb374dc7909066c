#pragma once

#include <string>

namespace thawslip::app {

/// Makes a code that is worth the key of a run once: a file without content, named so, in a folder
/// that nobody else may look into. So whoever may read the key can make codes, while the desk runs
/// and from outside of it.
/// \throws SystemFailure
std::string make_code(const std::string& folder);

/// Whether there is such a code; by then it is used. Two who ask at a time do not both get it.
bool use_code(const std::string& folder, const std::string& code);

/// Takes away codes that nobody used.
void forget_codes(const std::string& folder);

} // namespace thawslip::app

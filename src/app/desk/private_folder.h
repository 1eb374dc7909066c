#pragma once

#include <string>

namespace thawslip::app {

/// Makes a folder that its owner alone may look into (mode 0700) where it is missing, with the
/// folders above it. One that is there must be the user's own, and loses what others may do in it.
/// \throws SystemFailure
void make_private_folder(const std::string& folder);

/// Where the desk keeps what must outlast it: "thawslip" below $XDG_STATE_HOME or ~/.local/state.
/// \throws SystemFailure where neither is known
std::string state_folder();

/// The same for what must not: below $XDG_RUNTIME_DIR, which ends with the login; else with the
/// state. (XDG Base Directory Specification, 0.8.)
std::string run_folder();

} // namespace thawslip::app

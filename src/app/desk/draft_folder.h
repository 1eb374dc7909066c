#pragma once

#include "desk/machine.h"

#include <string>

namespace thawslip::app {

/// Drafts of the days of a folder: a file each, for its owner alone, below `drafts`. They are known
/// by the whole paths of their days, so every desk of that folder finds them.
desk::Drafts draft_folder(const std::string& drafts, const std::string& days);

} // namespace thawslip::app

#pragma once

#include "app/command_line/command_description.h"

#include <string>

namespace thawslip::app {

/// What `--help` prints of a command: usage, words, options, commands, notes. No line is longer
/// than 80 columns, as long as no name or note is.
std::string help_text(const CommandDescription& command);

} // namespace thawslip::app

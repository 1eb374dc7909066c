#pragma once

#include <string>

namespace thawslip::app {

/// A word of a command line that is proposed, for a POSIX shell: in quotes where it needs any
/// (POSIX.1-2017, Shell Command Language, 2.2 Quoting).
std::string shell_word(const std::string& word);

} // namespace thawslip::app

#pragma once

#include "base/diagnostic.h"
#include "base/result.h"

#include <cstddef>
#include <string>

namespace thawslip::files {

/// Reads a file that the user named.
/// \returns its bytes, or what is wrong with naming it: there is none, it is a folder, too large…
/// \throws SystemFailure where it may not be read or the disk fails: nothing the user wrote
Result<std::string, Diagnostic> read_input(const std::string& path, std::size_t limit);

} // namespace thawslip::files

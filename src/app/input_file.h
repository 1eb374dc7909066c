#pragma once

#include "app/commands.h"
#include "app/settings.h"
#include "base/diagnostic.h"
#include "base/result.h"

#include <cstddef>
#include <string>
#include <vector>

namespace thawslip::app {

/// Reads a file that the user named.
/// \returns its bytes, or what is wrong with naming it: there is none, it is a folder, too large…
/// \throws SystemFailure where it may not be read or the disk fails: nothing the user wrote
Result<std::string, Diagnostic> read_input(const std::string& path, std::size_t limit);

/// Whether writing `output` would destroy one of the files that the user named for it (`inputs`:
/// days, stock, layout), the settings or the archive, by whatever name or link; then says so.
bool would_overwrite(const std::string& output, std::vector<std::string> inputs,
                     const Settings& settings, Console console);

} // namespace thawslip::app

#pragma once

#include "app/settings.h"
#include "archive/archive.h"

#include <optional>
#include <string>

namespace thawslip::app {

/// The archive's file: as the settings say, else under $XDG_DATA_HOME, or under ~/.local/share
/// where that is not set (XDG Base Directory Specification, 0.8).
/// \throws SystemFailure where none of them is known
std::string archive_file(const Settings& settings);

/// \throws SystemFailure where it cannot be opened
archive::Archive open_archive(const Settings& settings, archive::Mode mode);

/// The same for reading; nothing where nothing has been printed yet.
std::optional<archive::Archive> existing_archive(const Settings& settings, archive::Mode mode);

} // namespace thawslip::app

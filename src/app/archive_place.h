#pragma once

#include "app/commands.h"
#include "app/files/settings_file.h"
#include "archive/archive.h"
#include "base/result.h"

#include <optional>
#include <string>

namespace thawslip::app {

/// The archive's file: as the settings say (of one on a server, this station's copy), else under
/// $XDG_DATA_HOME, or under ~/.local/share where that is not set (XDG Base Directory Specification,
/// 0.8). \throws SystemFailure where none of them is known
std::string archive_file(const Settings& settings);

/// The same; empty where none is known.
std::string archive_file_if_known(const Settings& settings);

/// A place as the user wrote it: an address of a server, or a file where no shell was that would
/// have looked at it: "~/" is the home folder, and a relative one counts from `folder` (empty: the
/// folder the program runs in). \returns the place, or what is wrong with it
Result<std::string, std::string> archive_place(const std::string& written,
                                               const std::string& folder);

/// The same of what can only be a file.
Result<std::string, std::string> file_place(const std::string& written, const std::string& folder);

/// What to say where a question is about bags and there is no archive: its place may be mistyped.
std::string no_archive_text(const Settings& settings);

/// \throws SystemFailure where it cannot be opened
archive::Archive open_archive(const Settings& settings, archive::Mode mode);

/// The same for reading; nothing where nothing has been printed yet.
std::optional<archive::Archive> existing_archive(const Settings& settings, archive::Mode mode);

/// The same, for what needs one: where nothing has been printed yet, it is said as an error.
std::optional<archive::Archive> needed_archive(const Settings& settings, archive::Mode mode,
                                               Console console);

} // namespace thawslip::app

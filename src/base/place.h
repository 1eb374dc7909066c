#pragma once

#include <optional>
#include <string>

namespace thawslip {

/// Where a path leads when it is a symbolic link, or a chain of them; the file itself need not be
/// there. \returns nothing when the links go round in a circle
std::optional<std::string> end_of_links(const std::string& path);

/// Whether two names are of one place: of one file, by whatever path, symbolic or hard link, or one
/// name for a file that is not there yet.
bool is_same_place(const std::string& one, const std::string& other);

/// Whether `file`, wherever its links lead, stands in `folder` or below it.
bool stands_in(const std::string& file, const std::string& folder);

} // namespace thawslip

#pragma once

#include "archive/contents.h"
#include "base/result.h"

#include <string>

namespace thawslip::app {

// An archive as a folder of plain TOML, to be read without Thawslip and kept for as long as texts
// can be read:
//
//     archive.toml            what the folder is; the names of its days and prints, in order
//     days/0001-01/           revision 1 of description 1
//         as-written.toml     the description, byte for byte
//         record.toml         what the archive knows of it: when, from where, packages, bags
//     prints/0001/
//         print.toml          what was printed of which days, when, and with which settings
//         file-1.toml         a stock or layout of the cook's own, byte for byte
//
// A text that is no UTF-8 (the name of a file may be none) stands in hexadecimal under its key
// with `_hex` at the end.

/// Writes all that an archive holds into `folder`, which is made, or empty. It appears whole or
/// not at all, for its owner alone.
/// \throws SystemFailure
void write_archive_folder(const archive::Contents& contents, const std::string& folder);

/// Reads such a folder, whoever wrote it.
/// \returns the same contents, or all that is wrong, as it is shown to the user
Result<archive::Contents, std::string> read_archive_folder(const std::string& folder);

} // namespace thawslip::app

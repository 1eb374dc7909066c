#pragma once

#include "archive/contents.h"
#include "base/result.h"
#include "service/messages.h"

#include <cstddef>
#include <functional>
#include <string>
#include <vector>

namespace thawslip::service {

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

/// A file of such a folder. Its name is a path below the folder.
struct ArchiveFile {
    std::string name;
    std::string text;
};

/// All that an archive holds, as the files of its folder. The last one says that it is whole.
std::vector<ArchiveFile> archive_files(const archive::Contents& contents);

/// No file of such a folder is larger, in bytes.
inline constexpr std::size_t largest_archive_file = std::size_t{1} << 26U;

/// A file of the folder by its name, or why it cannot be had.
using ReadArchiveFile = std::function<Result<std::string, Diagnostic>(const std::string& name)>;

/// Reads such a folder, whoever wrote it.
/// \param folder what messages call it
Outcome<archive::Contents> read_archive_files(const std::string& folder,
                                              const ReadArchiveFile& read);

} // namespace thawslip::service

#pragma once

#include <string>

namespace thawslip {

/// The folder that a file's name stands in: "." for a name alone, "/" for what stands at the root.
std::string folder_of(const std::string& file);

/// Brings the names in a folder to the disk: a new or changed name outlasts a loss of power only
/// when the folder that holds it is synced too (Linux manual pages, fsync(2)). Some file systems
/// cannot sync a folder, and then nothing more can be done.
void sync_folder(const std::string& folder);

} // namespace thawslip

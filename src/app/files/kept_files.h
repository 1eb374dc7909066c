#pragma once

#include "archive/values.h"

#include <string>
#include <vector>

namespace thawslip::app {

/// A name of something shipped stays a name; a file is found again from any folder.
std::string lasting_name(const std::string& name_or_file);

/// The names of files of the cook's own as the archive keeps them: found again from any folder.
archive::PrintSetup with_lasting_names(archive::PrintSetup setup);

/// "/orchard/my.toml has changed", "… is gone": which of the cook's own files are not on the disk
/// as they were kept.
std::vector<std::string> changed_files(const std::vector<archive::SetupFile>& files);

} // namespace thawslip::app

#pragma once

#include "archive/contents.h"
#include "base/progress.h"
#include "service/messages.h"

#include <string>

namespace thawslip::app {

/// Writes all that an archive holds into `folder`, which is made, or empty, as
/// service/archive/archive_folder.h has it. It appears whole or not at all, for its owner alone.
/// \throws SystemFailure
void write_archive_folder(const archive::Contents& contents, const std::string& folder,
                          const Progress& progress = {});

/// Reads such a folder, whoever wrote it; nothing outside of it is read.
/// \returns the same contents, or all that is wrong
service::Outcome<archive::Contents> read_archive_folder(const std::string& folder);

} // namespace thawslip::app

#pragma once

#include "archive/tables/database.h"

namespace thawslip::archive {

/// All that a database holds at one moment, in memory: what is done to it does not reach the file.
Database copy_in_memory(const Database& database, std::chrono::milliseconds patience);

/// Throws ArchiveFailure: what is done with files is not done with an archive on a server.
[[noreturn]] void refuse_file_work(const std::string& address);

/// Copies all that `from` holds at one moment over what `to` holds.
void copy_into(const Database& to, const Database& from);

} // namespace thawslip::archive

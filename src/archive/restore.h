#pragma once

#include "archive/archive.h"

#include <chrono>
#include <functional>
#include <string>
#include <vector>

namespace thawslip::archive {

/// What was put into an archive's place.
struct Replaced {
    std::string kept;                  ///< where the archive of before is; empty: there was none
    std::vector<std::string> repaired; ///< what was wrong and is no longer
    std::vector<std::string> left;     ///< what is still wrong
};

/// Puts a copy of `backup` into the place of the archive at `path`, or where there is none yet.
///
/// The backup is checked first, and left as it is. The archive of before is kept beside, under the
/// name that is given back, with all that its log held: while others use it, nothing is done. A log
/// that a program left behind goes with it, for SQLite would write it over the copy ("How To
/// Corrupt An SQLite Database File", 1.4). At any moment one or the other stands at `path`.
/// Throws ArchiveFailure: Missing, Damaged, NotOurs… of the backup; Busy.
Replaced restore(const std::string& path, const std::string& backup,
                 std::chrono::milliseconds patience = std::chrono::seconds{5});

/// Rebuilds what can be rebuilt of the archive at `path`: what `rebuild` puts right, indexes, and
/// the index of words. It works on a copy, which takes the archive's place as in `restore` if it
/// has fewer faults; else nothing is changed. Nothing of what the archive holds is left out. Throws
/// ArchiveFailure where too little can be read. \param rebuild is given the copy where all
/// descriptions are sound; says what it put right
Replaced repair(const std::string& path,
                const std::function<std::vector<std::string>(Archive&)>& rebuild,
                std::chrono::milliseconds patience = std::chrono::seconds{5});

} // namespace thawslip::archive

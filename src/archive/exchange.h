#pragma once

#include "archive/archive.h"

#include <chrono>
#include <optional>
#include <string>

namespace thawslip::archive {

/// What two archives of one kitchen got from each other.
struct Exchanged {
    Merged sent;
    Merged fetched;
    /// Why nothing could be sent; what is new there was fetched all the same.
    std::optional<ArchiveFault> unsent;
};

/// Brings a station's file and the kitchen's archive on a server together: sends what the server
/// has not, then takes what is new there, each in one transaction. Both are unions of what either
/// knew, so that to do it again after an answer was lost adds nothing a second time, and whoever
/// was put back to a backup gets what it has lost. Bags of one id that may be two are left out and
/// named (Archive::merge). Throws ArchiveFailure, Away where the server goes away or `budget` is
/// spent; what was sent by then stays sent.
Exchanged exchange(Archive& station, Archive& server);

} // namespace thawslip::archive

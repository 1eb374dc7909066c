#pragma once

#include "archive/archive.h"
#include "service/messages.h"

namespace thawslip::service {

/// What a corrected date leaves behind: bags count as new by the day they were made on, so those of
/// the same file and dish that were printed with another day of that week still count as frozen.
/// Whether there are any is for the cook to say, who is told how they are taken back. Nothing where
/// the print made no bags.
Messages made_otherwise(archive::Archive& archive, const archive::PrintRecord& print,
                        const archive::Recorded& recorded);

} // namespace thawslip::service

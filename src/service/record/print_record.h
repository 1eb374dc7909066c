#pragma once

#include "archive/archive.h"
#include "service/print/printing.h"

#include <string>

namespace thawslip::service {

/// What the archive is to remember of a print: its days whole, also where a part was printed, so
/// that batches, numbers and ids are what they are without.
/// \param at the kitchen's date and time: `2026-10-17T14:05:00`
archive::PrintRecord print_record(const Printing& printing, const Settings& settings,
                                  const archive::WhichBatch& which, const archive::Station& station,
                                  const std::string& at);

/// What of a print is new to the archive, and what its first one means.
Messages news_of(const archive::Recorded& recorded, const archive::PrintRecord& print,
                 const Chosen& chosen);

} // namespace thawslip::service

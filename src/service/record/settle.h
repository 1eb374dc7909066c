#pragma once

#include "service/days.h"
#include "service/messages.h"
#include "service/print/surroundings.h"

namespace thawslip::service {

/// Gives the bags of planned days the ids that the archive has for their batches, or that are free
/// there.
/// \returns the days; nothing where they are wrong or something must be answered first
Outcome<Days> settle(const Days& planned, const IdSource& ids, const Settings& settings);

/// What the cook says of which bags these are, with the ids that the archive has for bags as they
/// were typed; nothing, and said, where one is not known there.
Outcome<archive::WhichBatch> with_known_bags(archive::Archive& archive, archive::WhichBatch which);

/// A dish of which only the cook can know whether its bags are ones that were printed before.
struct BatchQuestion {
    std::string dish;
    kitchen::Date made;
    std::vector<archive::KnownBatch> known;
};

/// What `settle` still asks of these days, as values; none where the days are wrong.
std::vector<BatchQuestion> batch_questions(const Days& planned, const IdSource& ids);

} // namespace thawslip::service

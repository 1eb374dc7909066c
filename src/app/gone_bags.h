#pragma once

#include "app/job.h"
#include "archive/archive.h"

#include <string>
#include <vector>

namespace thawslip::app {

/// Whether nothing of the bag is left: eaten or thrown away.
bool is_gone(const archive::Bag& bag);

/// Says on `console.err` which bags are noted as gone and get a label again all the same.
void tell_gone(const std::vector<archive::Bag>& bags, Console console);

/// The same for the bags whose labels a job prints, as far as there is an archive.
void tell_gone(const Job& job, const Days& days, const Settings& settings, Console console);

/// The day on which labels with this bag were last printed, where that was after it was noted as
/// gone; else empty.
std::string printed_since_gone(archive::Archive& archive, const archive::Bag& bag);

} // namespace thawslip::app

#pragma once

#include "app/commands.h"
#include "app/job.h"
#include "layout/compose.h"

namespace thawslip::app {

/// A label for every bag of every day, in the order written.
Job label_job(const Days& days, const Settings& settings);

/// For each dish its cook-day card, then a finishing card for each of its bags that has something
/// to add.
Job card_job(const Days& days, CardKinds kinds, const Settings& settings);

/// What a print is of.
const kitchen::PlannedPackage& package_of(const PrintOf& of, const Days& days);

/// The words and the code of each print of a job. Refers to all three: they must outlive it.
layout::Source source_of(const Job& job, const Days& days, const Settings& settings);

} // namespace thawslip::app

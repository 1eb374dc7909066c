#pragma once

#include "app/commands.h"
#include "app/job.h"

namespace thawslip::app {

/// A label for every bag of every day, in the order written.
Job label_job(const Days& days, const Settings& settings);

/// For each dish its cook-day card, then a finishing card for each of its bags that has something
/// to add.
Job card_job(const Days& days, CardKinds kinds, const Settings& settings);

} // namespace thawslip::app

#pragma once

#include "kitchen/plan.h"

namespace thawslip::kitchen {

/// The plan of a day without its cautions, as `plan` makes it otherwise: for whoever asks of many
/// days what does not depend on them. Most of a plan's time goes into its cautions.
Plan unjudged_plan(const Day& day, const StorageTable& table, Diagnostics& faults,
                   const KitchenSettings& settings);

} // namespace thawslip::kitchen

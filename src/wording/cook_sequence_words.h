#pragma once

#include "kitchen/plan.h"
#include "wording/print.h"
#include "wording/style.h"

namespace thawslip::wording {

/// How a dish is cooked, as one sequence: the cooking, then each moment's additions and the cook's
/// own steps in order (kitchen/cooking/cook_sequence.h), and last the temperature at which it is
/// done. A moment is the label of its first line.
Field sequence_field(const kitchen::PlannedPackage& planned, const Style& style);

/// "Done at 74 °C in the middle"; nothing to say where no temperature is set.
Field until_field(const kitchen::PlannedPackage& planned, const Style& style);

/// What is to be added, a moment after the other: the moment once, amount and thing, and where it
/// waits below; and between them, where they are started, the sides. Shorter, the sides are named
/// behind it all.
Field finish_grouped_field(const kitchen::PlannedPackage& planned, const Style& style);

} // namespace thawslip::wording

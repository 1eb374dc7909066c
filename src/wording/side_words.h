#pragma once

#include "kitchen/cooking/side_start.h"
#include "wording/print.h"
#include "wording/style.h"

#include <vector>

namespace thawslip::wording {

/// What is cooked beside a dish, for its card: a box, when it is started, what it is, how it is
/// cooked, and when it is ready where that is not at serving; and its own steps, which stay with
/// it.
std::vector<Paragraph> side_lines(const kitchen::SideStart& start,
                                  const kitchen::PlannedPackage& planned, const Style& style);

/// The same of all sides in their order, without their steps: for a finishing card. Shorter, what
/// they are, and where the rest stands.
Field sides_field(const kitchen::PlannedPackage& planned, const Style& style);

} // namespace thawslip::wording

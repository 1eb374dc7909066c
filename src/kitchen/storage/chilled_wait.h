#pragma once

#include "kitchen/day.h"
#include "kitchen/heat/thaw_lead.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/storage/storage.h"

#include <chrono>

namespace thawslip::kitchen {

/// How many days a package has spent in the refrigerator by the packing day: what the cook wrote,
/// and at least the days since it was made, for nothing says that it was frozen in between.
std::chrono::days days_chilled(const Package& package, Date packing_day);

/// How many more whole days a package may wait in the refrigerator for its place in the freezer:
/// the low end of the chosen list's refrigerator row of its shortest-lived class, as for every
/// printed date, less the days it has spent there. Never more than FDA Food Code 3-501.17's seven
/// days in all, never negative.
///
/// One day, less those spent, where no row says anything of a food that spoils, or it is not known
/// what it is: the low end of the lists' rows for raw meat, poultry and fish, the strictest that it
/// may turn out to be. Bread, fruit and the like may wait all seven. None in a refrigerator above
/// 5 °C, since the rows hold for 4 °C (40 °F).
std::chrono::days may_wait_chilled(const Package& package, Date packing_day,
                                   const StorageTable& table, const ThawSettings& settings);

/// How long a package keeps once it has thawed in the refrigerator: what its lists leave of it
/// after the days that it was chilled before. None in a refrigerator above 5 °C, since the rows
/// hold for 4 °C (40 °F). Nothing where it is not thawed there, or no list says anything.
std::optional<DaysLeft> keeps_thawed(const Package& package, Date packing_day,
                                     const StorageTable& table, const ThawSettings& settings);

} // namespace thawslip::kitchen

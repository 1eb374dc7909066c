#pragma once

#include "archive/tables/server/values.h"

#include <vector>

namespace thawslip::archive {

/// The same statements, but of those that insert into tables and follow each other, one statement a
/// table: a server that checks rights and plans once for 200 rows needs a tenth of the time. What
/// others refer to comes first, so that no row waits for one behind it.
std::vector<Posted> in_sets(std::vector<Posted> posted);

} // namespace thawslip::archive

#pragma once

#include "kitchen/day.h"
#include "toml/file_table.h"

#include <vector>

namespace thawslip::intake {

/// What is cooked on cook day beside a bag: each `[[package.side]]`.
std::vector<kitchen::Side> read_sides(toml::Table& package);

} // namespace thawslip::intake

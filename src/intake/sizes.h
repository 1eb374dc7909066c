#pragma once

#include "kitchen/day.h"
#include "toml/file_table.h"

#include <vector>

namespace thawslip::intake {

/// What a bag of a package is said to be like where its dish is not in sizes.
/// \param table of the package, or of one of its sizes
void read_bag(toml::Table& table, kitchen::Package& package);

/// A package for each `[[package.size]]` of a dish; where there is none, the package alone.
///
/// What a size does not say of its bags, the package does; but each size counts and weighs its own.
/// Finishing ingredients and sides are written for a bag of as many servings as the package says,
/// or its first size, and the other sizes get theirs in proportion.
/// \param table of the package \param package all of it but its sizes
std::vector<kitchen::Package> in_sizes(toml::Table& table, const kitchen::Package& package);

/// Refuses sizes of one dish that serve as many: by that number the archive knows a size again, and
/// two would change places with their tables.
void refuse_twin_sizes(toml::Reader& reader, const kitchen::Day& day);

} // namespace thawslip::intake

#pragma once

#include "base/diagnostic.h"
#include "kitchen/day.h"
#include "kitchen/storage/storage.h"

namespace thawslip::kitchen {

/// The package with everyday words in `food` turned into the kinds they mean for certain. Where
/// `use_by` is given and `food` is not, what the words of the package name stands in `food`, and
/// `food_basis` says so; where they name nothing known, leftovers, which ask for the highest safe
/// minimum.
Package with_kinds(const Package& package, const StorageTable& table);

/// Whether each of the package's `food` is one kind, known and to be frozen; says which are not.
/// \param package as with_kinds() gives it
bool knows_food(const Package& package, const StorageTable& table, Diagnostics& faults);

} // namespace thawslip::kitchen

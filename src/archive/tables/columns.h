#pragma once

#include "archive/tables/statement.h"
#include "archive/values.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::archive {

/// A date as a column holds it; one that is not ok() for any other text.
kitchen::Date date_of(const std::string& iso);

/// Lists are kept one entry a line.
std::string lines_of(const std::vector<std::string>& entries);

/// The columns of a package, from `first` on: dish, words, made, keep_until, basis, servings,
/// grams, allergens, classes, thaw, thaw_minutes, place. \returns the package without its bags and
/// batch
PackageRecord package_at(const Statement& row, int first);

/// Binds what of a package may be missing: grams, allergens, classes, thaw, thaw_minutes, place.
Statement& with_optional(Statement& statement, const PackageRecord& package);

/// The columns of a batch, from `first` on: kitchen_number, batch_kitchen, batch.
kitchen::Batch batch_at(const Statement& row, int first);

/// Whether two descriptions of a package say the same, but for ids and batch, and for what schema 1
/// did not keep.
bool same_package(const PackageRecord& one, const PackageRecord& other);
bool same_packages(const std::vector<PackageRecord>& some,
                   const std::vector<PackageRecord>& others);

/// Whether a label of the one may stick on the other: the same dish, made the same day, of the
/// same allergens and storage classes, as many servings and as heavy. What schema 1 did not keep is
/// not known to be the same.
bool same_food(const PackageRecord& one, const PackageRecord& other);

} // namespace thawslip::archive

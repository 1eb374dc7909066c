#pragma once

#include "archive/tables/database.h"

#include <cstdint>
#include <span>
#include <string_view>

namespace thawslip::archive {

/// Marks a database file as ours ("PRAGMA application_id"): "THAW" in ASCII.
inline constexpr std::int64_t application_id = 0x54484157;

/// The schema as steps from nothing: step n leads from version n to n + 1. A released step never
/// changes; a new version is a new step at the end.
std::span<const std::string_view> schema_steps();

/// Looks at what `database` is, and changes nothing.
/// \throws ArchiveFailure NotOurs, NewerSchema or Damaged
/// \returns its version; 0 for an empty file
std::size_t schema_version(const Database& database, std::size_t newest);

/// Leads the database through the steps it lacks, in one transaction.
void migrate(const Database& database, std::span<const std::string_view> steps);

} // namespace thawslip::archive

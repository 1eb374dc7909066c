#pragma once

#include "archive/archive.h"
#include "kitchen/plan.h"
#include "service/messages.h"

#include <span>
#include <string>
#include <vector>

namespace thawslip::service {

/// The packages of bags by the texts of their codes, each with only those bags: as the archive
/// knows them, as packages_to_eat gives them; those that it does not know from the code alone.
/// What a code leaves out and a plan needs is said, and then the strict side is taken.
/// \param archive nullptr: nothing has been printed yet
Outcome<std::vector<kitchen::PlannedPackage>> packages_of_codes(archive::Archive* archive,
                                                                std::span<const std::string> texts);

} // namespace thawslip::service

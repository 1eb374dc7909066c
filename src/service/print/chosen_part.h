#pragma once

#include "service/print/job.h"
#include "service/print/part.h"
#include "service/print/surroundings.h"

#include <string>

namespace thawslip::service {

/// How many of each print are made: as the part says, or else the settings.
int copies_of(What what, const Part& part, const Settings& settings);

/// Which of the days' bags are printed, and how often.
Outcome<Chosen> choose_part(What what, const Days& days, const Part& part, const Settings& settings,
                            const Surroundings& around);

/// What the archive knows of bags, opened when it is asked. Refers to what it is given.
PartSource known_bags(What what, const Days& days, const Surroundings& around);

/// Why a job has nothing that is printed.
std::string why_nothing(const Job& job, const Part& part);

} // namespace thawslip::service

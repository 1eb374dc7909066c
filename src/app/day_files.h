#pragma once

#include "service/days.h"

#include <string>
#include <vector>

namespace thawslip::app {

using service::Days;
using service::DayText;
using service::Ids;
using service::Settings;

/// Reads and plans every file of `files`, as of today.
/// \throws SystemFailure where a file may not be read
Days read_days(const std::vector<std::string>& files, const Settings& settings,
               Ids ids = Ids::Final);

} // namespace thawslip::app

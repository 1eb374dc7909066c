#pragma once

#include "service/days.h"

#include <string>
#include <vector>

namespace thawslip::app {

using service::Days;
using service::DayText;
using service::Ids;
using service::Settings;

/// Reads the descriptions of days.
/// \throws SystemFailure where a file may not be read
service::DayTexts read_texts(const std::vector<std::string>& files);

/// Reads and plans every file of `files`.
Days read_days(const std::vector<std::string>& files, const Settings& settings);

} // namespace thawslip::app

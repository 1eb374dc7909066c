#pragma once

#include "service/settings.h"

#include <string>

namespace thawslip::service {

/// A settings file with a remark behind each key: paper and language, and for each job its printer,
/// stock, dots and copies. What is as usual stands in a remark, to be changed there. Reading it
/// gives the same settings.
std::string settings_text(const Settings& settings);

} // namespace thawslip::service

#pragma once

#include "app/days.h"
#include "wording/style.h"

#include <string>

namespace thawslip::app {

/// What `check --json` answers, on one line: for each package its dish, its dates as ISO 8601, the
/// ids of its bags and its cautions; then the cautions of the days themselves.
/// `{"packages":[{"dish","made","use_by","bags":[…],"cautions":[{"id","severity","text"}]}],
/// "cautions":[…]}`
std::string check_json(const Days& days, const wording::Style& style);

} // namespace thawslip::app

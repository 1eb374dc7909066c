#pragma once

#include "app/days.h"
#include "wording/style.h"

#include <string>

namespace thawslip::app {

/// What `check --json` answers, on one line: for each package its dish, its dates as ISO 8601, the
/// ids of its bags and its cautions; then the cautions of the days themselves, and
/// for each day what goes into the freezer when; null where the freezer's size is not known.
/// `{"packages":[{"dish","made","use_by","bags":[…],"cautions":[{"id","severity","text"}]}],
/// "cautions":[…],"freezers":[{"grams","limit_grams","batches":[{"day","grams","bags":[…]}],
/// "elsewhere_grams","elsewhere":[…],"too_heavy":[…],"without_weight":[…]}]}`
std::string check_json(const Days& days, const wording::Style& style);

} // namespace thawslip::app

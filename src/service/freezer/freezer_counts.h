#pragma once

#include "service/freezer/freezer_list.h"

#include <chrono>
#include <map>
#include <span>
#include <string>

namespace thawslip::service {

/// What is frozen of these bags, by the month of the date on the label.
std::map<std::chrono::year_month, BagTotal> totals_by_month(std::span<const FoundBag> bags);

/// The same by where they lie, as the cook wrote it; empty: where that is not known.
std::map<std::string, BagTotal> totals_by_place(std::span<const archive::Bag> bags);

} // namespace thawslip::service

#pragma once

#include "archive/values.h"

#include <chrono>
#include <string>
#include <string_view>

namespace thawslip::app {

/// What stands before the date of a bag: "use by" where the cook set it, "best by" where a list of
/// storage times gave it.
std::string_view date_head(const archive::Bag& bag);

/// "RAW · Mince patties": the dish of a bag as commands name it.
std::string dish_text(const archive::Bag& bag);

/// A moment of the archive as people read it: "2026-10-17 14:05".
std::string shown_moment(const std::string& at);

/// "2 days", "3 to 5 days", and of no day "the same day".
std::string days_text(std::chrono::days low, std::chrono::days high);

} // namespace thawslip::app

#pragma once

#include "toml/value.h"

#include <optional>
#include <string_view>

namespace thawslip::toml {

/// A date, a time of day or a date with a time (TOML 1.0, "Offset Date-Time" to "Local Time");
/// nothing where `word` is none or the calendar has no such day.
std::optional<Content> moment_of(std::string_view word);

/// Takes `2026-02-30` off the front: whether there is such a day is another question.
std::optional<Date> take_date(std::string_view& word);

/// Whether `word` begins with `shape`, in which a `d` stands for a digit.
bool begins_like(std::string_view word, std::string_view shape);

} // namespace thawslip::toml

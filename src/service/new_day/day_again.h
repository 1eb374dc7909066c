#pragma once

#include "base/result.h"
#include "kitchen/date.h"

#include <string>

namespace thawslip::service {

/// The text of a day that is packed again on another date: the same dishes, with every remark. The
/// dates that were of its bags are taken out, for none of them may stand on others: `use_by` and
/// `made` of each package, and the day before on which food was prepared, where that is a date.
/// What keeps by its kind of food gets its date by that; for what does not, `check` asks again.
/// \returns why it cannot be, where the text has a line that belongs to no key
Result<std::string, std::string> day_again(const std::string& text, kitchen::Date made);

/// The name of a file for a day that is packed then: "2026-10-17-day.toml", or from words of a
/// cook. It ends in "day", by which a desktop knows it and opens it on the page
/// (src/package/desktop). Never one that a folder cannot have; whoever makes the file adds a number
/// where it is there.
std::string day_file_name(kitchen::Date made, const std::string& words, int number);

} // namespace thawslip::service

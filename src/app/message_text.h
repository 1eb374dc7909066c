#pragma once

#include "code/message.h"
#include "kitchen/date.h"
#include "wording/style.h"

#include <string>

namespace thawslip::app {

/// A bag's message as a person wants it at the stove: what it is, whether it is still good, then
/// what to do, in order. Several lines, each with its end.
/// \param today what the keep-until date is held against
std::string message_text(const code::Message& message, kitchen::Date today,
                         const wording::Style& style);

/// The same for a program: one JSON object on one line, without its end. Dates are ISO 8601; keys
/// of what the message does not say are left out. `days_left` counts from `today` to the
/// keep-until date, negative when that is past; `when` is in words, of the style's language.
std::string message_json(const code::Message& message, kitchen::Date today,
                         const wording::Style& style);

} // namespace thawslip::app

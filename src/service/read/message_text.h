#pragma once

#include "code/message.h"
#include "kitchen/date.h"
#include "wording/style.h"

#include <string>

namespace thawslip::service {

/// A bag's message as a person wants it at the stove: what it is, whether it is still good, then
/// what to do, in order. Several lines, each with its end.
/// \param today what the keep-until date is held against
std::string message_text(const code::Message& message, kitchen::Date today,
                         const wording::Style& style);

/// How it is cooked, in one line: "slow cooker, 7–9 h, until 74 °C"; empty where nothing is said.
std::string cooking_text(const code::Cooking& cooking, const wording::Style& style);

} // namespace thawslip::service

#pragma once

#include "desk/phones/phones.h"

#include <string>
#include <vector>

namespace thawslip::desk {

/// Phones as the text that is kept of them, in JSON.
std::string phones_text(const std::vector<Phone>& phones);

/// Reads that text. What is no phone in it is left out: it is let in again, by a new code.
std::vector<Phone> read_phones(const std::string& text);

} // namespace thawslip::desk

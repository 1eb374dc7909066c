#pragma once

#include "code/message.h"
#include "support/random.h"

#include <cstddef>
#include <string>

namespace thawslip::test_support {

/// Words as cooks and mischief write them: any printable ASCII, often digits, dots and colons.
std::string random_words(Random& random, std::size_t longest);

/// A message of any shape, its words not yet folded.
code::Message random_message(Random& random);

} // namespace thawslip::test_support

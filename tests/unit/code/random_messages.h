#pragma once

#include "code/message.h"
#include "support/random.h"

#include <cstddef>
#include <string>

namespace thawslip::code::test {

using thawslip::test::Random;

/// Words as cooks and mischief write them: any printable ASCII, often digits, dots and colons.
std::string random_words(Random& random, std::size_t longest);

/// A message of any shape, its words not yet folded.
Message random_message(Random& random);

} // namespace thawslip::code::test

#pragma once

#include "code/message.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <vector>

namespace thawslip::code::test {

/// SplitMix64: small, seeded, the same everywhere.
class Random {
public:
    explicit Random(std::uint64_t seed) : state_{seed} {}
    std::uint64_t next();
    std::size_t below(std::size_t end) { return static_cast<std::size_t>(next() % end); }
    bool chance(std::size_t one_in) { return below(one_in) == 0; }

private:
    std::uint64_t state_;
};

/// Words as cooks and mischief write them: any printable ASCII, often digits, dots and colons.
std::string random_words(Random& random, std::size_t longest);

/// A message of any shape, its words not yet folded.
Message random_message(Random& random);

} // namespace thawslip::code::test

#pragma once

#include <cstddef>
#include <cstdint>

namespace thawslip::test_support {

/// SplitMix64: small, seeded, and the same numbers on every machine.
class Random {
public:
    explicit Random(std::uint64_t seed) : state_{seed} {}

    std::uint64_t next() {
        std::uint64_t z = (state_ += 0x9E3779B97F4A7C15U);
        z = (z ^ (z >> 30U)) * 0xBF58476D1CE4E5B9U;
        z = (z ^ (z >> 27U)) * 0x94D049BB133111EBU;
        return z ^ (z >> 31U);
    }
    std::size_t below(std::size_t end) { return static_cast<std::size_t>(next() % end); }
    bool chance(std::size_t one_in) { return below(one_in) == 0; }

    /// From 0 to less than 1.
    double unit() { return static_cast<double>(next() >> 11U) * 0x1p-53; }
    double between(double low, double high) { return low + (high - low) * unit(); }

private:
    std::uint64_t state_;
};

} // namespace thawslip::test_support

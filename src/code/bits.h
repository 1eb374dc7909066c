#pragma once

#include <array>
#include <bit>
#include <cstddef>
#include <cstdint>

namespace thawslip::code {

/// One row or column of modules, a bit a module: bit i is module i, set where it is dark. Bits
/// shifted in from either end are light, as the quiet zone is.
template <std::size_t Words>
class Bits {
public:
    static constexpr std::size_t size = Words * 64;

    constexpr void set(std::size_t i, bool value) {
        const std::uint64_t bit = std::uint64_t{1} << (i % 64);
        words_[i / 64] = value ? words_[i / 64] | bit : words_[i / 64] & ~bit;
    }
    constexpr bool operator[](std::size_t i) const {
        return (words_[i / 64] >> (i % 64) & 1U) != 0;
    }

    constexpr int count() const {
        int sum = 0;
        for (const std::uint64_t word : words_) {
            sum += std::popcount(word);
        }
        return sum;
    }
    constexpr bool any() const { return *this != Bits{}; }

    /// Module i of the result is module i + n of this.
    constexpr Bits operator>>(std::size_t n) const {
        Bits moved = *this;
        for (; n >= 64; n -= 64) {
            for (std::size_t i = 0; i < Words; ++i) {
                moved.words_[i] = i + 1 < Words ? moved.words_[i + 1] : 0;
            }
        }
        for (std::size_t i = 0; i < Words; ++i) {
            const std::uint64_t next = i + 1 < Words ? moved.words_[i + 1] : 0;
            // In two steps, as a shift by all 64 bits is undefined.
            moved.words_[i] = moved.words_[i] >> n | next << 1 << (63 - n);
        }
        return moved;
    }
    /// Module i of the result is module i - n of this.
    constexpr Bits operator<<(std::size_t n) const {
        Bits moved = *this;
        for (; n >= 64; n -= 64) {
            for (std::size_t i = Words; i-- > 0;) {
                moved.words_[i] = i > 0 ? moved.words_[i - 1] : 0;
            }
        }
        for (std::size_t i = Words; i-- > 0;) {
            const std::uint64_t next = i > 0 ? moved.words_[i - 1] : 0;
            moved.words_[i] = moved.words_[i] << n | next >> 1 >> (63 - n);
        }
        return moved;
    }

    friend constexpr Bits operator&(Bits a, const Bits& b) {
        for (std::size_t i = 0; i < Words; ++i) {
            a.words_[i] &= b.words_[i];
        }
        return a;
    }
    friend constexpr Bits operator|(Bits a, const Bits& b) {
        for (std::size_t i = 0; i < Words; ++i) {
            a.words_[i] |= b.words_[i];
        }
        return a;
    }
    friend constexpr Bits operator^(Bits a, const Bits& b) {
        for (std::size_t i = 0; i < Words; ++i) {
            a.words_[i] ^= b.words_[i];
        }
        return a;
    }
    friend constexpr Bits operator~(Bits a) {
        for (std::uint64_t& word : a.words_) {
            word = ~word;
        }
        return a;
    }
    friend constexpr bool operator==(const Bits&, const Bits&) = default;

private:
    std::array<std::uint64_t, Words> words_{};
};

} // namespace thawslip::code

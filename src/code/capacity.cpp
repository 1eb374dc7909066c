#include "code/capacity.h"

#include <array>
#include <cassert>
#include <cstddef>

namespace thawslip::code {
namespace {

using PerVersion = std::array<int, 40>;

// Rows: L, M, Q, H. Columns: versions 1 to 40.
constexpr std::array<PerVersion, 4> check_codewords = {{
    {7,  10, 15, 20, 26, 18, 20, 24, 30, 18, 20, 24, 26, 30, 22, 24, 28, 30, 28, 28,
     28, 28, 30, 30, 26, 28, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30},
    {10, 16, 26, 18, 24, 16, 18, 22, 22, 26, 30, 22, 22, 24, 24, 28, 28, 26, 26, 26,
     26, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28, 28},
    {13, 22, 18, 26, 18, 24, 18, 22, 20, 24, 28, 26, 24, 20, 30, 24, 28, 28, 26, 30,
     28, 30, 30, 30, 30, 28, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30},
    {17, 28, 22, 16, 22, 28, 26, 26, 24, 28, 24, 28, 22, 24, 24, 30, 28, 28, 26, 28,
     30, 24, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30, 30},
}};
constexpr std::array<PerVersion, 4> block_counts = {{
    {1, 1, 1, 1,  1,  2,  2,  2,  2,  4,  4,  4,  4,  4,  6,  6,  6,  6,  7,  8,
     8, 9, 9, 10, 12, 12, 12, 13, 14, 15, 16, 17, 18, 19, 19, 20, 21, 22, 24, 25},
    {1,  1,  1,  2,  2,  4,  4,  4,  5,  5,  5,  8,  9,  9,  10, 10, 11, 13, 14, 16,
     17, 17, 18, 20, 21, 23, 25, 26, 28, 29, 31, 33, 35, 37, 38, 40, 43, 45, 47, 49},
    {1,  1,  2,  2,  4,  4,  6,  6,  8,  8,  8,  10, 12, 16, 12, 17, 16, 18, 21, 20,
     23, 23, 25, 27, 29, 34, 34, 35, 38, 40, 43, 45, 48, 51, 53, 56, 59, 62, 65, 68},
    {1,  1,  2,  4,  4,  4,  5,  6,  8,  8,  11, 11, 16, 16, 18, 16, 19, 21, 25, 25,
     25, 34, 30, 32, 35, 37, 40, 42, 45, 48, 51, 54, 57, 60, 63, 66, 70, 74, 77, 81},
}};

/// Codewords that the modules left over by finder, timing, alignment, format and version patterns
/// can hold.
int total_codewords(int version) {
    int modules = (16 * version + 128) * version + 64;
    if (version >= 2) {
        const int alignment = version / 7 + 2; // patterns along one side
        modules -= (25 * alignment - 10) * alignment - 55;
    }
    if (version >= 7) {
        modules -= 36; // version information
    }
    return modules / 8;
}

} // namespace

Blocks blocks_of(int version, Level level) {
    assert(version >= 1 && version <= 40 && "a QR Code has a version from 1 to 40");
    const auto row = static_cast<std::size_t>(level);
    const auto column = static_cast<std::size_t>(version - 1);
    return {block_counts.at(row).at(column), total_codewords(version),
            check_codewords.at(row).at(column)};
}

} // namespace thawslip::code

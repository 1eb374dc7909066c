#pragma once

#include "code/row_major.h"
#include "code/symbol.h"

#include <array>
#include <cstddef>
#include <vector>

// The parts of a symbol that carry no codewords: where they are and what they say.
// Source: ISO/IEC 18004:2015, 6.3 "Symbol structure" and 7.9 "Format information" (from memory;
// the tests compare every symbol with one that another encoder drew).
namespace thawslip::code {

/// side × side: true where a module belongs to a finder, separator, timing, alignment, format or
/// version pattern. Equal to its own transpose.
std::vector<bool> function_modules(int version);

/// The 15 bits of format information, masked for printing: level and mask with their BCH code.
unsigned format_bits(Level level, int mask);

struct Module {
    int x = 0;
    int y = 0;
};

constexpr bool is_inside(Module module, int side) {
    return module.x >= 0 && module.y >= 0 && module.x < side && module.y < side;
}

/// The middles of the alignment patterns, row by row; none for version 1.
std::vector<Module> alignment_middles(int version);

/// Where a module stands in a symbol of this side that is kept row by row.
constexpr std::size_t index_of(Module module, int side) {
    return row_major(module.x, module.y, side);
}

/// The two modules that show bit `index` (0 to 14, 0 the lowest) of the format information.
std::array<Module, 2> format_modules(int index, int side);

/// Does mask 0 to 7 turn module (x, y) over?
constexpr bool turns_over(int mask, int x, int y) {
    switch (mask) {
    case 0: return (x + y) % 2 == 0;
    case 1: return y % 2 == 0;
    case 2: return x % 3 == 0;
    case 3: return (x + y) % 3 == 0;
    case 4: return (x / 3 + y / 2) % 2 == 0;
    case 5: return x * y % 2 + x * y % 3 == 0;
    case 6: return (x * y % 2 + x * y % 3) % 2 == 0;
    default: return ((x + y) % 2 + x * y % 3) % 2 == 0;
    }
}

} // namespace thawslip::code

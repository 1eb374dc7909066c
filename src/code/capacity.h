#pragma once

#include "code/symbol.h"

namespace thawslip::code {

/// Modules of a symbol's side, without the quiet zone: 21 for version 1 to 177 for version 40.
constexpr int side_of(int version) {
    return 17 + 4 * version;
}

/// How a symbol's codewords are dealt into Reed–Solomon blocks.
/// Source: ISO/IEC 18004:2015, table 9 "Error correction characteristics" (from memory; the
/// capacities that follow from it are checked against DENSO WAVE's published tables).
struct Blocks {
    int count = 1;
    int total_codewords = 26; ///< of all blocks together, error correction included
    int check_codewords = 7;  ///< error-correction codewords of each block
    int data_codewords() const { return total_codewords - count * check_codewords; }
};

Blocks blocks_of(int version, Level level); ///< \pre version is 1 to 40

} // namespace thawslip::code

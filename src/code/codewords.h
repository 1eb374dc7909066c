#pragma once

#include "code/symbol.h"

#include <vector>

namespace thawslip::code {

/// For each module, row by row, the codeword that it holds a bit of, counted in the order in which
/// codewords are placed: upwards and downwards in columns of two, from the lower right corner.
/// -1 for function modules and for the few bits left over.
/// Source: ISO/IEC 18004:2015, 7.7.3 "Symbol character placement" (from memory).
std::vector<int> codeword_map(int version);

/// For each codeword, in the order of placement, the Reed–Solomon block that it belongs to: the
/// blocks' data codewords take turns, then their error-correction codewords do.
/// Source: ISO/IEC 18004:2015, 7.6 "Constructing the final message codeword sequence".
std::vector<int> block_map(int version, Level level);

} // namespace thawslip::code

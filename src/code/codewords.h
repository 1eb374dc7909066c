#pragma once

#include "code/patterns.h"
#include "code/symbol.h"

#include <vector>

namespace thawslip::code {

/// The modules that hold the codewords' bits, eight a codeword, in the order of placement: upwards
/// and downwards in columns of two, from the lower right corner.
/// Source: ISO/IEC 18004:2015, 7.7.3 "Symbol character placement" (from memory).
std::vector<Module> placed_modules(int version);

/// For each module, row by row, the codeword that it holds a bit of, counted in that order. -1 for
/// function modules and for the few bits left over.
std::vector<int> codeword_map(int version);

/// For each codeword, in the order of placement, the Reed–Solomon block that it belongs to: the
/// blocks' data codewords take turns, then their error-correction codewords do.
/// Source: ISO/IEC 18004:2015, 7.6 "Constructing the final message codeword sequence".
std::vector<int> block_map(int version, Level level);

} // namespace thawslip::code

#pragma once

#include "code/segments.h"
#include "code/symbol.h"

namespace thawslip::code {

/// The symbol that carries `segments`, with the mask that ISO/IEC 18004:2015, 7.8.3 "Evaluation of
/// data masking results" prefers.
/// \pre the segments fit: their bits are at most 8 · blocks_of(version, level).data_codewords()
Symbol draw(const std::vector<Segment>& segments, int version, Level level);

} // namespace thawslip::code

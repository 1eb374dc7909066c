#pragma once

#include <cstddef>
#include <cstdint>
#include <optional>
#include <vector>

namespace thawslip::code {

/// A word of a Reed–Solomon code as it was read, put right. The code is that of QR Code: the field
/// of 256 elements with x⁸ + x⁴ + x³ + x² + 1, the generator's roots the powers 0 to `check` − 1 of
/// x (ISO/IEC 18004:2015, 7.5.2). Of `check` codewords one is spent on each place in `erased`,
/// which is known to be doubtful, and two on each wrong place that nobody knew of (Forney 1965,
/// Sugiyama and others 1975, from memory). \param word first codeword first, the check codewords at
/// its end; at most 255 \param spare check codewords that must be left over, so that what comes out
/// is no accident \returns nothing where more is wrong than can be put right
std::optional<std::vector<std::uint8_t>> corrected(std::vector<std::uint8_t> word,
                                                   std::size_t check,
                                                   const std::vector<std::size_t>& erased,
                                                   std::size_t spare);

} // namespace thawslip::code

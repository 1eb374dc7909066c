#pragma once

#include <cstdint>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::code {

/// The text that the data codewords of a symbol carry, in numeric, alphanumeric and byte segments
/// (ISO/IEC 18004:2015, 7.4), as Thawslip writes it: printable ASCII and newlines, and after its
/// end nothing but padding.
/// \returns nothing where they carry anything else
std::optional<std::string> text_of_codewords(const std::vector<std::uint8_t>& data, int version);

} // namespace thawslip::code

#pragma once

#include <string>
#include <string_view>

namespace thawslip::code {

/// CRC-15/CAN of a text: polynomial 0x4599, start 0, no reflection (ISO 11898-1, cyclic redundancy
/// code of the classical frame). Detects every wrong character and every swap of neighbours.
unsigned crc15(std::string_view text);

/// `crc15` as three characters of five bits each, highest first, in digits and capitals without
/// I, L, O and U: nobody mistakes one for another when typing them by hand.
std::string check_characters(std::string_view text);

} // namespace thawslip::code

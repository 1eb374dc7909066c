#pragma once

#include <string>
#include <string_view>

namespace thawslip::unicode {

/// Composed form, in which "é" is one character however it was typed.
/// Source: UAX #15, Unicode Normalization Forms, NFC.
/// \pre well-formed UTF-8
std::string to_nfc(std::string_view text);

} // namespace thawslip::unicode

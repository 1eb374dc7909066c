#pragma once

#include <string>
#include <string_view>

namespace thawslip::unicode {

/// The text in printable ASCII (U+0020 to U+007E), as a person would type it on a keyboard that
/// has nothing else: "½ cup" becomes "1/2 cup", "1½" "1 1/2", "180 °C" "180 C", "20–30" "20-30",
/// "crème" "creme", "щи" "shchi", "ψωμί" "psomi". Control characters become spaces, invisible
/// ones go; what no rule knows becomes "?". NFC and NFD give the same. Never fails.
/// \pre well-formed UTF-8
std::string to_ascii(std::string_view text);

/// What two spellings of a word share: to_ascii in lower case, single spaces between words and
/// none at the ends.
/// \pre well-formed UTF-8
std::string fold_for_search(std::string_view text);

} // namespace thawslip::unicode

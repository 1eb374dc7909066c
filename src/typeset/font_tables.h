#pragma once

#include <string>
#include <string_view>

namespace thawslip::typeset {

/// Why the tables of a font file cannot be trusted: one reaches beyond the file's end, or its bytes
/// do not add up to the checksum in the directory (OpenType 1.9, "Organization of an OpenType
/// font", "Table directory" and "Calculating checksums"). Empty when there is no fault.
///
/// Shaping libraries let both pass, and a letter from a damaged file is then drawn wrong or not at
/// all, with nobody told.
std::string fault_of_tables(std::string_view bytes);

} // namespace thawslip::typeset

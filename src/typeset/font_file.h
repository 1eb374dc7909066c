#pragma once

#include "base/result.h"

#include <hb.h>
#include <string>

namespace thawslip::typeset {

/// The bytes of a file that begins like a TrueType font and whose tables are whole.
/// \returns the bytes, or words that say what the file is instead (without naming it)
Result<std::string, std::string> read_font_file(const std::string& path);

/// Why text cannot be set in `face`: a table missing or damaged, or a licence that forbids
/// embedding. Empty when there is no fault.
std::string fault_of_face(hb_face_t* face);

} // namespace thawslip::typeset

#pragma once

#include "base/result.h"
#include "typeset/face.h"

#include <string>
#include <vector>

namespace thawslip::typeset {

/// For each weight the font files to look for a character in, first to last.
struct FontFiles {
    std::vector<std::string> regular;
    std::vector<std::string> medium;
    std::vector<std::string> bold;
};

/// Opens the files, each one once however often it is named.
/// \returns the set, or words that name the file and say what is wrong with it; a weight without
///          any file is a fault too
Result<FontSet, std::string> make_font_set(const FontFiles& files);

} // namespace thawslip::typeset

#pragma once

#include "service/messages.h"

#include <string>
#include <vector>

namespace thawslip::app {

/// The texts of the codes in a photograph. What takes too long to read ends the program.
service::Outcome<std::vector<std::string>> photo_texts(const std::string& file);

/// Whether a word of the command line names a photograph: by its ending, or by what the file begins
/// with.
bool names_a_photo(const std::string& word);

} // namespace thawslip::app

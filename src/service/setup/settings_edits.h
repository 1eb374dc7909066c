#pragma once

#include "service/settings.h"
#include "toml/edit.h"

#include <vector>

namespace thawslip::service {

/// The edits of a settings file's text after which it says what `setup` was answered: paper,
/// language, and for each job its printer, stock and dots. What comes to the same as before is left
/// as it is written, and so is every other key.
/// \param before as the file has them
std::vector<toml::Edit> settings_edits(const Settings& before, const Settings& answered);

} // namespace thawslip::service

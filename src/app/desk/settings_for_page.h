#pragma once

#include "desk/machine.h"

#include <string>

namespace thawslip::app {

/// The file of settings for the page: what it reads, and how it is replaced.
/// \param named as --settings names it; empty: the usual one
/// \throws SystemFailure from what it gives, where the system fails or there is no place for it
desk::SettingsFile settings_for_page(const std::string& named);

} // namespace thawslip::app

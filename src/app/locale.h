#pragma once

#include "service/settings.h"

#include <string>

namespace thawslip::app {

/// The locale of the desktop for paper and for messages: LC_ALL, else LC_PAPER or LC_MESSAGES, else
/// LANG (POSIX, Base Definitions, 8.2, Internationalization Variables). Empty where none is set.
std::string paper_locale();
std::string message_locale();

/// Has settings in which nobody says which paper there is take the locale's.
void take_paper_of_locale(service::Settings& settings);

/// The language of the desktop, where it is one that prints speak; else as it is.
std::string language_of_locale(const service::Settings& settings);

} // namespace thawslip::app

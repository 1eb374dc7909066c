#pragma once

#include "http/message.h"

namespace thawslip::desk {

/// Whether a phone may ask for this: bags read, the freezer's list, dinners proposed and planned, a
/// bag noted as taken out or eaten. All else is the computer's: to print, files, settings, the
/// archive.
bool may_phone_ask(const http::Request& request);

} // namespace thawslip::desk

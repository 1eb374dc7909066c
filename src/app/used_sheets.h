#pragma once

#include "app/commands.h"
#include "archive/values.h"
#include "service/print/lay_out.h"

#include <functional>
#include <optional>
#include <string>

namespace thawslip::app {

/// Where the last print on a stock stopped, by the archive as it is; asks it only when called.
std::function<std::optional<archive::UsedSheet>(const std::string& stock)>
used_sheets(const Settings& settings);

/// Has an archive that is there note where a print stopped that it does not record otherwise: a
/// list, or one printed again. Where it cannot, that is said, and the print stays what it is.
void note_sheet(const service::LaidOut& laid_out, const Settings& settings, Console console);

} // namespace thawslip::app

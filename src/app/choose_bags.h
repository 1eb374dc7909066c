#pragma once

#include "app/commands.h"
#include "service/freezer/named_bags.h"

namespace thawslip::app {

/// Asks whoever sits at the terminal; nothing where nobody does.
service::ChooseBags choose_bags(WhichOfSeveral which, Console console);

} // namespace thawslip::app

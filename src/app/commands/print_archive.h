#pragma once

#include "app/commands.h"
#include "service/print/surroundings.h"

namespace thawslip::app {

/// The archive to ask about the ids of a print that is to be remembered: the one that it goes into,
/// or where it is not to be, by a copy that nothing changes. Where such a copy cannot be had, this
/// is said on `console.err`, and the ids are as planned.
service::IdSource ids_for_print(const PrintOptions& options, const Settings& settings,
                                Console console);

/// The same for lists, which are not remembered, and take no answer that makes new ids.
service::IdSource ids_for_lists(const PrintOptions& options, const Settings& settings,
                                Console console);

/// The same for who only looks.
service::IdSource ids_to_look(const Settings& settings, Console console);

} // namespace thawslip::app

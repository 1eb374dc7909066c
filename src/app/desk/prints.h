#pragma once

#include "app/commands.h"
#include "desk/machine.h"

namespace thawslip::app {

// What the desk prints, by the same ways as the commands of these names, so that ids, archive and
// words are the same. A failure of the system after which nothing is printed is thrown.
desk::Delivered print_for_desk(const desk::PrintWish& wish, const std::string& day,
                               const Settings& settings);
desk::Delivered reprint_for_desk(const desk::ReprintWish& wish, const Settings& settings);
desk::Delivered door_list_for_desk(const service::Look& look, const desk::Destination& to,
                                   const Settings& settings);

/// A copy of the archive, and the archive as a folder of text, in `folder`, with today's date in
/// their names; and a number where there is one of today already.
desk::Delivered back_up_for_desk(const std::string& folder, const Settings& settings);
desk::Delivered export_for_desk(const std::string& folder, const Settings& settings);

} // namespace thawslip::app

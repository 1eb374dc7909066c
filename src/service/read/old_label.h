#pragma once

#include "archive/archive.h"
#include "code/message.h"
#include "service/messages.h"

namespace thawslip::service {

/// Holds what a label's code says of its bag against what the archive has: where the date to use it
/// by, the allergens or whether it is raw differ, the label is an old one, and that is said.
/// \param bag the one that the code names
void hold_against_archive(const code::Message& read, const archive::Bag& bag,
                          archive::Archive& archive, Messages& messages);

} // namespace thawslip::service

#pragma once

#include "archive/archive.h"
#include "service/days.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// Notes in the plans what the archive knows to be frozen beside their own bags: of each dish how
/// many bags, and of all how much room they take. Bags of a kitchen of another name lie in another
/// freezer and do not count. \pre the plans' bags have their final ids
void note_in_freezer(Days& days, archive::Archive& archive);

/// What the cook has to do about bags that the freezer has no room for; empty where it has, and
/// where its size is not known.
std::vector<std::string> room_troubles(const kitchen::Plan& plan, const wording::Style& style);

} // namespace thawslip::service

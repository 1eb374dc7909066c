#pragma once

#include "service/days.h"
#include "service/messages.h"
#include "typeset/face.h"
#include "wording/door_list.h"

#include <vector>

namespace thawslip::service {

/// What a package contains, may contain, and gets on cook day.
wording::DoorAllergens door_allergens(const kitchen::PlannedPackage& planned,
                                      const kitchen::AllergenList& list);

/// Every bag of the days, as the door list takes it.
/// \param list the allergens that what is added on cook day is held against
std::vector<wording::DoorRow> door_rows(const Days& days, const kitchen::AllergenList& list);

/// Dishes that came from elsewhere, and places, may have names that no face can set: one of them
/// must not keep all the others off the list. Has "?" stand for what cannot be set. \returns which
/// they are
Messages make_settable(std::vector<wording::DoorRow>& rows, const typeset::FontSet& fonts);

} // namespace thawslip::service

#pragma once

#include "archive/archive.h"
#include "service/freezer/named_bags.h"
#include "service/messages.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// When and where something is noted.
struct Moment {
    std::string at; ///< the kitchen's date and time: `2026-10-17T14:05:00`
    archive::Station station;
};

/// The states from which a bag comes into this one, the likeliest first.
std::vector<archive::State> states_before(archive::State state);

/// Notes that bags, by their ids as typed or by words of their dishes, came into a state. Nothing
/// is noted where one of them is not known; where the archive knows of a time to come that nothing
/// can follow, that is said of the bag. \returns the bags that are noted so now, as they were
/// before
Outcome<std::vector<archive::Bag>> note_state(archive::Archive& archive,
                                              const std::vector<std::string>& typed,
                                              archive::State state, const Moment& moment,
                                              const ChooseBags& choose = {});

} // namespace thawslip::service

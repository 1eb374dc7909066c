#pragma once

#include "archive/archive.h"
#include "service/freezer/named_bags.h"
#include "service/messages.h"

#include <cstdint>
#include <optional>
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
/// is noted where one of them is not known, or is eaten or discarded and so cannot be; where the
/// archive knows of a time to come that nothing can follow, that is said of the bag, and what to
/// mind where it comes back from thawing. \returns the bags that are noted so now, as they were
/// before
Outcome<std::vector<archive::Bag>> note_state(archive::Archive& archive,
                                              const std::vector<std::string>& typed,
                                              archive::State state, const Moment& moment,
                                              const ChooseBags& choose = {});

/// Notes where bags lie by now, in the cook's words, without blanks around them and at most as many
/// as a description has. Nothing
/// is noted where one of the bags is not known. \returns the bags, as they were before
Outcome<std::vector<archive::Bag>> move_bags(archive::Archive& archive,
                                             const std::vector<std::string>& typed,
                                             const std::string& place, const Moment& moment,
                                             const ChooseBags& choose = {});

/// Takes back the last thing that this station noted of bags; refused where there is none, or
/// another than `only`, a command of the archive. \returns the bags, before and after, and what
/// does not count any longer
Outcome<std::vector<archive::UndoneBag>> undo_last(archive::Archive& archive, const Moment& moment,
                                                   std::optional<std::int64_t> only = {});

} // namespace thawslip::service

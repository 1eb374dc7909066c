#pragma once

#include "service/freezer/freezer_state.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// Notes where bags lie by now, in the cook's words, at most as many as a description has. Nothing
/// is noted where one of the bags is not known. \returns the bags, as they were before
Outcome<std::vector<archive::Bag>> move_bags(archive::Archive& archive,
                                             const std::vector<std::string>& typed,
                                             const std::string& place, const Moment& moment,
                                             const ChooseBags& choose = {});

/// Takes back the last thing that this station noted of bags; refused where there is none.
/// \returns the bags, before and after, and what does not count any longer
Outcome<std::vector<archive::UndoneBag>> undo_last(archive::Archive& archive, const Moment& moment);

} // namespace thawslip::service

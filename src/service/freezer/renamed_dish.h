#pragma once

#include "service/freezer/freezer_state.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// A bag that was known by two names, and is known by the second from now on.
struct JoinedBag {
    archive::Bag before;
    archive::Bag now;
};

struct RenamedDish {
    std::vector<JoinedBag> joined;
    std::vector<archive::Bag> alone; ///< of the old name, of a number that the new one has not
};

/// Notes that bags of one dish, by words of it or by an id of one, are those that were printed
/// under another name: bag 1 is bag 1, and what was noted of the one holds for the other. Refused
/// where they are not of one day, or one is raw and the other is not, or where the words fit
/// several dishes and it is not known which is which; where the labels of the old name are wrong
/// (record/label_facts.h), that is said, for they must come off.
Outcome<RenamedDish> rename_dish(archive::Archive& archive, const std::string& before,
                                 const std::string& now, const Moment& moment);

} // namespace thawslip::service

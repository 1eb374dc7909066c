#pragma once

#include "archive/archive.h"
#include "kitchen/date.h"

#include <map>
#include <string>
#include <vector>

namespace thawslip::service {

struct FreezerQuestion {
    std::vector<std::string> words; ///< of dishes, or their beginnings; empty: everything
    bool gone_too = false;          ///< bags that are out, eaten or discarded as well
};

/// A bag of the archive, and the day its label was printed after it was noted as gone, if any.
struct FoundBag {
    archive::Bag bag;
    std::string printed_since;
};

struct BagTotal {
    int bags = 0;
    int servings = 0;
    double grams = 0.0;      ///< of those with a weight
    bool all_weighed = true; ///< whether all have one

    BagTotal& operator+=(const BagTotal& more);
};

struct FreezerList {
    std::vector<FoundBag> bags;             ///< the soonest date first
    std::map<std::string, BagTotal> totals; ///< of each dish, what is frozen
    int past = 0;                           ///< frozen bags past the date on their label
};

/// What the archive has of what is asked for.
FreezerList freezer_list(archive::Archive& archive, const FreezerQuestion& question,
                         kitchen::Date today);

} // namespace thawslip::service

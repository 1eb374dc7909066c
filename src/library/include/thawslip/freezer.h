#pragma once

#include "thawslip/outcome.h"

#include <string>
#include <vector>

namespace thawslip {

/// A bag that the archive knows.
struct FrozenBag {
    std::string id;
    std::string dish;
    int servings = 0;
    int number = 1; ///< bag `number` of `of`
    int of = 1;
    std::string made;       ///< ISO 8601
    std::string keep_until; ///< ISO 8601
    std::string state;      ///< "frozen", "out", "eaten", "discarded"
};

/// The bags of an archive, the soonest date first. The file is read and never changed.
/// \param words of dishes, or their beginnings; empty: everything that is frozen
Outcome<std::vector<FrozenBag>> list_bags(const std::string& archive_file,
                                          const std::vector<std::string>& words,
                                          const std::string& today);

} // namespace thawslip

#pragma once

#include "archive/values.h"
#include "kitchen/bag_id.h"

#include <chrono>
#include <string>

namespace thawslip::test_support {

inline kitchen::Date october(unsigned day) {
    return std::chrono::year{2026} / 10 / std::chrono::day{day};
}

/// A dish as an archive keeps it, each bag by its own id.
inline archive::PackageRecord package(const std::string& dish, kitchen::Date made, int bags) {
    archive::PackageRecord record;
    record.dish = record.words = dish;
    record.made = made;
    record.keep_until = std::chrono::year{2027} / 1 / 17;
    record.servings = 4;
    for (int n = 1; n <= bags; ++n) {
        record.bags.push_back(kitchen::bag_id({dish, made, n}));
    }
    return record;
}

} // namespace thawslip::test_support

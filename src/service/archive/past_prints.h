#pragma once

#include "archive/archive.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// A print of the archive, as a cook looks for one to make again.
struct PastPrint {
    std::string at;       ///< when it was last printed: `2026-10-17T14:05:00`
    std::string first_at; ///< and first
    int times = 1;
    std::string what;                ///< "labels", "cards", "finishing cards", "cook-day cards"
    std::string stock;               ///< a name, or a file
    std::vector<kitchen::Date> days; ///< its packing days
    std::vector<std::string> dishes; ///< in the order of their descriptions, each once
    std::vector<std::string> bags;   ///< ids; of a part those of the part
};

/// All prints, the one that was printed last first.
std::vector<PastPrint> past_prints(archive::Archive& archive);

} // namespace thawslip::service

#pragma once

#include "app/archive_commands.h"
#include "archive/archive.h"
#include "service/freezer/gone_bags.h"

#include <optional>
#include <set>
#include <string>
#include <vector>

namespace thawslip::app {

using service::is_labels;

/// One print of the archive and the bags of it that are wanted.
struct WantedPrint {
    archive::StoredPrint print;
    std::set<std::string> bags; ///< newest ids
    bool whole = false;
};

/// The prints to be made again: those that hold the bags, or those of a date. What stands in the
/// way is said on `console.err`; then nothing is returned, and the status to leave with is Refused.
std::optional<std::vector<WantedPrint>> find_prints(archive::Archive& archive,
                                                    const ReprintOptions& options, Console console);

} // namespace thawslip::app

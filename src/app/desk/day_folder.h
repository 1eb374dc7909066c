#pragma once

#include "base/result.h"
#include "desk/machine.h"

#include <functional>
#include <string>

namespace thawslip::app {

/// Where the desk's days are.
struct DeskPlace {
    std::string folder; ///< its whole path; it need not be there yet
    std::string open;   ///< the name of the day that was named; empty: none was
};

/// The place that the cook named: a folder, or a file in one; where none is named, "Thawslip" among
/// the documents. \returns it, or what is wrong with that name
Result<DeskPlace, std::string> desk_place(const std::string& named);

/// Why a file must not be written; empty where it may.
using WhyKept = std::function<std::string(const std::string& file)>;

/// The days of a folder. A file whose links lead out of the folder is none of them.
/// \param why_kept is asked before each writing
desk::Folder day_folder(const DeskPlace& place, const WhyKept& why_kept);

} // namespace thawslip::app

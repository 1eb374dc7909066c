#pragma once

#include "service/print/lay_out.h"
#include "service/reprint/wanted_prints.h"

#include <functional>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::service {

/// What of a print's look is other than when it was printed.
struct ReprintLook {
    std::string stock;             ///< name or file; empty: as it was printed on
    std::optional<int> first_cell; ///< nothing: as printed for a whole print, else 1; or next_cell
    std::vector<int> skip;
    std::optional<int> copies = {}; ///< nothing: as printed for a whole print, else 1
};

/// Prints of the archive, laid out again, and the job that names them.
struct Reprint {
    LaidOut laid_out;
    Job job;
    std::size_t prints = 0; ///< how many there are, with their copies
};

/// Says which of the cook's own files are no longer as they were kept: "/orchard/my.toml is gone".
using ChangedFiles =
    std::function<std::vector<std::string>(const std::vector<archive::SetupFile>&)>;

/// Makes prints of the archive again, one after the other on the same sheets: with the settings,
/// stock and layouts that they were printed with, but for what is asked for now. What has changed
/// since, and labels of bags that are gone or described otherwise by now, are said.
/// \pre there is at least one print
Outcome<Reprint> reprint(archive::Archive& archive, const std::vector<WantedPrint>& prints,
                         const ReprintLook& asked, const Surroundings& around,
                         const ChangedFiles& changed_files);

} // namespace thawslip::service

#pragma once

#include "typeset/face.h"

#include <filesystem>
#include <string>

namespace thawslip::app {

/// Where the files that come with the program are: layouts/ and fonts/ below `root`.
struct DataFolder {
    std::filesystem::path root;

    std::filesystem::path stocks() const { return root / "layouts" / "stock"; }
    std::filesystem::path layouts() const { return root / "layouts"; }
    std::filesystem::path fonts() const { return root / "fonts"; }
};

/// The folder named by THAWSLIP_DATA; else share/thawslip beside the program's bin/, so that an
/// installed tree can be moved. (A build tree has links there to the source's own files.)
/// \throws SystemFailure when it is not there
DataFolder find_data_folder();

/// The faces named in fonts/faces.toml, looked for beside it and in the system's font folders.
/// \throws SystemFailure naming the missing or broken file and the package that brings it
typeset::FontSet load_fonts(const DataFolder& data);

} // namespace thawslip::app

#pragma once

#include "typeset/face.h"

#include <filesystem>
#include <string>

namespace thawslip::files {

/// Where the files that come with the program are: layouts/ and fonts/ below `root`.
struct DataFolder {
    std::filesystem::path root;

    std::filesystem::path stocks() const { return root / "layouts" / "stock"; }
    std::filesystem::path layouts() const { return root / "layouts"; }
    std::filesystem::path fonts() const { return root / "fonts"; }
};

/// Whether layouts and fonts are in a folder.
bool is_data_folder(const std::filesystem::path& root);

/// The faces named in fonts/faces.toml, looked for beside it and in the system's font folders.
/// \throws SystemFailure naming the missing or broken file and the package that brings it
typeset::FontSet load_fonts(const DataFolder& data);

} // namespace thawslip::files

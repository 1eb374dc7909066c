#include "app/files/scratch_folder.h"

#include "base/system_failure.h"

#include <filesystem>
#include <unistd.h>

namespace thawslip::app {

namespace fs = std::filesystem;

ScratchFolder::ScratchFolder() : path_{(fs::temp_directory_path() / "thawslip-XXXXXX").string()} {
    if (::mkdtemp(path_.data()) == nullptr) {
        throw SystemFailure{"cannot create a folder in " + fs::temp_directory_path().string()};
    }
}

ScratchFolder::~ScratchFolder() {
    std::error_code ignored; // nothing to be done about it, and nothing lost
    fs::remove_all(path_, ignored);
}

std::string ScratchFolder::file(const std::string& name) const {
    return (fs::path{path_} / name).string();
}

} // namespace thawslip::app

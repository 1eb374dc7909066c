#include "base/folder.h"

#include <fcntl.h>
#include <filesystem>
#include <unistd.h>

namespace thawslip {

std::string folder_of(const std::string& file) {
    const auto folder = std::filesystem::path{file}.parent_path();
    return folder.empty() ? "." : folder.string();
}

void sync_folder(const std::string& folder) {
    const int descriptor = ::open(folder.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (descriptor >= 0) {
        ::fsync(descriptor);
        ::close(descriptor);
    }
}

} // namespace thawslip

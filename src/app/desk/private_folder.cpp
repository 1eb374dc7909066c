#include "app/desk/private_folder.h"

#include "app/files/user_folders.h"
#include "base/system_failure.h"

#include <cerrno>
#include <cstring>
#include <filesystem>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail_to_make(const std::string& folder, const std::string& why) {
    throw SystemFailure{fmt::format("cannot create the folder {}: {}", folder, why)};
}

} // namespace

void make_private_folder(const std::string& folder) {
    std::error_code error;
    fs::create_directories(fs::path{folder}.parent_path(), error);
    if (::mkdir(folder.c_str(), 0700) == 0) {
        return;
    }
    struct stat status {};
    if (::lstat(folder.c_str(), &status) != 0) {
        fail_to_make(folder, std::strerror(errno));
    }
    if (!S_ISDIR(status.st_mode) || status.st_uid != ::geteuid()) {
        fail_to_make(folder, "something else that is not yours has its name");
    }
    if ((status.st_mode & 0077U) != 0 && ::chmod(folder.c_str(), 0700) != 0) {
        fail_to_make(folder, std::strerror(errno));
    }
}

std::string state_folder() {
    auto folder = user_place("XDG_STATE_HOME", ".local/state", "thawslip");
    if (folder.empty()) {
        throw SystemFailure{"no place is known for what is not saved yet: neither XDG_STATE_HOME "
                            "nor HOME is an absolute path"};
    }
    return folder;
}

std::string run_folder() {
    const auto run = folder_in("XDG_RUNTIME_DIR");
    return run.empty() ? state_folder() + "/run" : run + "/thawslip";
}

} // namespace thawslip::app

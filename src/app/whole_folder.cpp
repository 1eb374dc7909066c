#include "app/whole_folder.h"

#include "app/exit_status.h"
#include "app/files/descriptor.h"
#include "base/folder.h"

#include <algorithm>
#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

[[noreturn]] void fail(const char* doing, const std::string& what, int error) {
    throw SystemFailure{fmt::format("cannot {} {}: {}", doing, what, std::strerror(error))};
}

std::string without_slashes(std::string path) {
    while (path.size() > 1 && path.ends_with('/')) {
        path.pop_back();
    }
    return path;
}

} // namespace

bool holds_something(const std::string& path) {
    std::error_code error;
    return fs::exists(fs::symlink_status(path, error)) &&
           !(fs::is_directory(path, error) && fs::is_empty(path, error));
}

WholeFolder::WholeFolder(std::string path) : path_{without_slashes(std::move(path))} {
    if (holds_something(path_)) {
        throw SystemFailure{
            fmt::format("{} already exists and is not empty; nothing was written", path_)};
    }
    temporary_ = folder_of(path_) + "/.thawslip-XXXXXX";
    if (::mkdtemp(temporary_.data()) == nullptr) {
        const int reason = errno;
        temporary_.clear();
        fail("make a folder beside", path_, reason);
    }
}

WholeFolder::~WholeFolder() {
    if (temporary_.empty()) {
        return;
    }
    // One by one and by name: looking into a folder needs a descriptor, of which there may be none
    // left.
    for (const auto& file : files_) {
        ::unlink(file.c_str());
    }
    std::for_each(folders_.rbegin(), folders_.rend(),
                  [](const std::string& folder) { ::rmdir(folder.c_str()); });
    ::rmdir(temporary_.c_str());
}

void WholeFolder::add_folder(const std::string& name) {
    const auto folder = temporary_ + "/" + name;
    if (::mkdir(folder.c_str(), 0700) != 0) {
        fail("write", path_ + "/" + name, errno);
    }
    folders_.push_back(folder);
}

void WholeFolder::add_file(const std::string& name, std::string_view text) {
    const Descriptor file{
        ::open((temporary_ + "/" + name).c_str(), O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC, 0600)};
    if (file.number() < 0) {
        fail("write", path_ + "/" + name, errno);
    }
    files_.push_back(temporary_ + "/" + name);
    if (!write_all(file.number(), text)) {
        fail("write", path_ + "/" + name, errno);
    }
}

void WholeFolder::commit() {
    {
        // The whole file system once, where syncing thousands of small files would take minutes
        // (Linux manual pages, syncfs(2): since Linux 5.8 it tells of failed writes).
        const Descriptor folder{::open(temporary_.c_str(), O_RDONLY | O_DIRECTORY | O_CLOEXEC)};
        if (folder.number() < 0 || ::syncfs(folder.number()) != 0) {
            fail("write", path_, errno);
        }
    }
    // A folder replaces an empty one, and no other (POSIX, rename()).
    if (::rename(temporary_.c_str(), path_.c_str()) != 0) {
        fail("write", path_, errno);
    }
    temporary_.clear();
    sync_folder(folder_of(path_));
}

} // namespace thawslip::app

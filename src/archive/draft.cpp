#include "archive/draft.h"

#include "archive/fault.h"
#include "base/folder.h"

#include <array>
#include <cerrno>
#include <cstdio>
#include <cstdlib>
#include <cstring>
#include <fcntl.h>
#include <filesystem>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace thawslip::archive {
namespace {

[[noreturn]] void fail(const std::string& file) {
    throw ArchiveFailure{{ArchiveFault::Kind::CannotOpen,
                          fmt::format("cannot make {}: {}", file, std::strerror(errno))}};
}

} // namespace

void make_folders(const std::string& folder) {
    std::error_code error;
    if (std::filesystem::exists(folder, error)) {
        return;
    }
    make_folders(folder_of(folder));
    if (::mkdir(folder.c_str(), 0700) == 0) {
        sync_folder(folder_of(folder));
    }
}

Draft::Draft(const std::string& file) : file_{file}, name_{folder_of(file) + "/.thawslip-XXXXXX"} {
    const int descriptor = ::mkostemp(name_.data(), O_CLOEXEC);
    if (descriptor < 0) {
        fail(file);
    }
    ::close(descriptor);
}

Draft::~Draft() {
    for (const char* companion : {"", "-journal", "-wal", "-shm"}) {
        ::unlink((name_ + companion).c_str());
    }
}

/// Not all file systems can do both at once (Linux manual pages, rename(2), RENAME_NOREPLACE).
void Draft::take_name() const {
    const bool renamed =
        ::renameat2(AT_FDCWD, name_.c_str(), AT_FDCWD, file_.c_str(), RENAME_NOREPLACE) == 0;
    if (!renamed && (errno != EINVAL || ::access(file_.c_str(), F_OK) == 0 ||
                     ::rename(name_.c_str(), file_.c_str()) != 0)) {
        fail(file_);
    }
    sync_folder(folder_of(file_));
}

void Draft::take_place() const {
    if (::rename(name_.c_str(), file_.c_str()) != 0) {
        fail(file_);
    }
    sync_folder(folder_of(file_));
}

} // namespace thawslip::archive

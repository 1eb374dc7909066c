#include "app/whole_file.h"

#include "app/exit_status.h"
#include "base/folder.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

/// The permissions a new file gets, or those of the file that is replaced.
mode_t mode_for(const std::string& path) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) {
        return status.st_mode & 0777U;
    }
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666U & ~mask;
}

} // namespace

WholeFile::WholeFile(std::string path) : path_{std::move(path)} {
    if (path_ == "-") {
        descriptor_ = STDOUT_FILENO;
        return;
    }
    struct stat status {};
    if (::stat(path_.c_str(), &status) == 0 && !S_ISREG(status.st_mode)) {
        throw SystemFailure{
            fmt::format("cannot write {}: it is {}, not a file", path_,
                        S_ISDIR(status.st_mode) ? "a directory" : "a device or a pipe")};
    }
    temporary_ = folder_of(path_) + "/.thawslip-XXXXXX";
    descriptor_ = ::mkostemp(temporary_.data(), O_CLOEXEC);
    if (descriptor_ < 0) {
        temporary_.clear();
        fail("create");
    }
}

WholeFile::~WholeFile() {
    if (!temporary_.empty()) {
        ::close(descriptor_);
        ::unlink(temporary_.c_str());
    }
}

void WholeFile::fail(const char* doing) const {
    throw SystemFailure{fmt::format(
        "cannot {} {}: {}", doing, path_ == "-" ? "standard output" : path_, std::strerror(errno))};
}

void WholeFile::flush() {
    std::string_view left = buffer_;
    while (!left.empty()) {
        const auto written = ::write(descriptor_, left.data(), left.size());
        if (written < 0 && errno != EINTR) {
            fail("write");
        }
        left.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0);
    }
    buffer_.clear();
}

void WholeFile::write(std::string_view bytes) {
    buffer_ += bytes;
    constexpr std::size_t enough = std::size_t{1} << 16U;
    if (buffer_.size() >= enough) {
        flush();
    }
}

void WholeFile::commit() {
    flush();
    if (temporary_.empty()) {
        return;
    }
    if (::fchmod(descriptor_, mode_for(path_)) != 0 || ::fsync(descriptor_) != 0) {
        fail("write");
    }
    if (::rename(temporary_.c_str(), path_.c_str()) != 0) {
        fail("write");
    }
    ::close(descriptor_);
    temporary_.clear();
    sync_folder(folder_of(path_));
}

void write_whole_file(const std::string& path, std::string_view bytes) {
    WholeFile file{path};
    file.write(bytes);
    file.commit();
}

} // namespace thawslip::app

#include "app/files/whole_file.h"

#include "app/exit_status.h"
#include "app/files/descriptor.h"
#include "base/folder.h"
#include "base/place.h"

#include <cerrno>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/stat.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

/// The permissions a new file gets, or those of the file that is replaced.
mode_t mode_for(const std::string& path, Readers readers) {
    struct stat status {};
    if (::stat(path.c_str(), &status) == 0) {
        return status.st_mode & 0777U;
    }
    if (readers == Readers::OwnerAlone) {
        return 0600U;
    }
    const mode_t mask = ::umask(0);
    ::umask(mask);
    return 0666U & ~mask;
}

/// What /proc calls the file behind a descriptor (proc(5)).
std::string own_path(int descriptor) {
    return fmt::format("/proc/self/fd/{}", descriptor);
}

/// A new file that has no name yet, so that the system takes it back whatever ends the program
/// (open(2), O_TMPFILE). \returns its descriptor; -1 where the file system has no such files, or
/// there is no /proc to name it by later
int nameless_file_in(const std::string& folder) {
    const int descriptor = ::open(folder.c_str(), O_TMPFILE | O_WRONLY | O_CLOEXEC, 0600);
    if (descriptor >= 0 && ::access(own_path(descriptor).c_str(), F_OK) != 0) {
        ::close(descriptor);
        return -1;
    }
    return descriptor;
}

/// Gives a nameless file a name. \returns whether it could; errno is EEXIST where the name is taken
bool give_name(int descriptor, const std::string& name) {
    return ::linkat(AT_FDCWD, own_path(descriptor).c_str(), AT_FDCWD, name.c_str(),
                    AT_SYMLINK_FOLLOW) == 0;
}

/// Gives a nameless file a hidden name that nobody else has. \returns it; empty: errno says why not
std::string give_hidden_name(int descriptor, const std::string& folder) {
    for (int attempt = 0;; ++attempt) {
        auto name = fmt::format("{}/.thawslip-{}-{}", folder, ::getpid(), attempt);
        if (give_name(descriptor, name)) {
            return name;
        }
        if (errno != EEXIST) {
            return {};
        }
    }
}

} // namespace

WholeFile::WholeFile(std::string path, Readers readers)
    : path_{std::move(path)}, readers_{readers} {
    if (path_ == "-") {
        descriptor_ = STDOUT_FILENO;
        return;
    }
    const auto place = end_of_links(path_);
    if (!place) {
        throw SystemFailure{fmt::format("cannot write {}: {}", path_, std::strerror(ELOOP))};
    }
    place_ = *place;
    struct stat status {};
    if (::stat(place_.c_str(), &status) == 0 && !S_ISREG(status.st_mode)) {
        throw SystemFailure{
            fmt::format("cannot write {}: it is {}, not a file", path_,
                        S_ISDIR(status.st_mode) ? "a directory" : "a device or a pipe")};
    }
    descriptor_ = nameless_file_in(folder_of(place_));
    if (descriptor_ >= 0) {
        return;
    }
    temporary_ = folder_of(place_) + "/.thawslip-XXXXXX";
    descriptor_ = ::mkostemp(temporary_.data(), O_CLOEXEC);
    if (descriptor_ < 0) {
        fail("create");
    }
}

WholeFile::~WholeFile() {
    if (!place_.empty()) {
        ::close(descriptor_);
    }
    if (!temporary_.empty()) {
        ::unlink(temporary_.c_str());
    }
}

void WholeFile::fail(const char* doing) const {
    throw SystemFailure{fmt::format("cannot {} {}: {}", doing,
                                    place_.empty() ? "standard output" : path_,
                                    std::strerror(errno))};
}

void WholeFile::flush() {
    if (!write_all(descriptor_, buffer_)) {
        fail("write");
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

/// A link is made where there is nothing yet, and is refused where there is a file: only a rename
/// replaces one.
void WholeFile::take_place() {
    if (temporary_.empty()) {
        if (give_name(descriptor_, place_)) {
            return;
        }
        if (errno != EEXIST) {
            fail("write");
        }
        temporary_ = give_hidden_name(descriptor_, folder_of(place_));
        if (temporary_.empty()) {
            fail("write");
        }
    }
    if (::rename(temporary_.c_str(), place_.c_str()) != 0) {
        fail("write");
    }
    temporary_.clear();
}

void WholeFile::make_ready() {
    flush();
    if (!place_.empty() &&
        (::fchmod(descriptor_, mode_for(place_, readers_)) != 0 || ::fsync(descriptor_) != 0)) {
        fail("write");
    }
}

void WholeFile::commit() {
    commit_if([] { return true; });
}

bool WholeFile::commit_if(const std::function<bool()>& may) {
    make_ready();
    if (!may()) {
        return false;
    }
    if (!place_.empty()) {
        take_place();
        sync_folder(folder_of(place_));
    }
    return true;
}

void write_whole_file(const std::string& path, std::string_view bytes, Readers readers) {
    WholeFile file{path, readers};
    file.write(bytes);
    file.commit();
}

} // namespace thawslip::app

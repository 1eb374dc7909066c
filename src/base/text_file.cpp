#include "base/text_file.h"

#include "base/printable.h"

#include <array>
#include <cerrno>
#include <fcntl.h>
#include <fmt/format.h>
#include <optional>
#include <sys/stat.h>
#include <system_error>
#include <unistd.h>

namespace thawslip {
namespace {

/// A file descriptor that closes itself.
class OpenFile {
public:
    explicit OpenFile(const std::string& path)
        : descriptor_{::open(path.c_str(), O_RDONLY | O_CLOEXEC | O_NONBLOCK | O_NOCTTY)} {}
    ~OpenFile() {
        if (is_open()) {
            ::close(descriptor_);
        }
    }
    OpenFile(const OpenFile&) = delete;
    OpenFile& operator=(const OpenFile&) = delete;

    bool is_open() const { return descriptor_ >= 0; }
    int descriptor() const { return descriptor_; }

private:
    int descriptor_;
};

FileFault from_errno(const std::string& path, int error) {
    using Kind = FileFault::Kind;
    switch (error) {
    case ENOENT:
    case ENOTDIR: return {Kind::Missing, path, 0, 0, error};
    case EACCES:
    case EPERM: return {Kind::NotPermitted, path, 0, 0, error};
    default: return {Kind::Unreadable, path, 0, 0, error};
    }
}

std::optional<FileFault> judge(const std::string& path, const struct stat& status,
                               std::size_t limit) {
    using Kind = FileFault::Kind;
    if (S_ISDIR(status.st_mode)) {
        return FileFault{Kind::Directory, path, 0, 0, 0};
    }
    if (!S_ISREG(status.st_mode)) {
        return FileFault{Kind::NotOrdinary, path, 0, 0, 0};
    }
    const auto size = static_cast<std::uintmax_t>(status.st_size);
    if (size > limit) {
        return FileFault{Kind::TooLarge, path, size, limit, 0};
    }
    return std::nullopt;
}

Result<std::string, FileFault> read_all(const std::string& path, const OpenFile& file,
                                        std::size_t limit) {
    std::string text;
    std::array<char, 65536> buffer{};
    for (;;) {
        const auto count = ::read(file.descriptor(), buffer.data(), buffer.size());
        if (count < 0 && errno == EINTR) {
            continue;
        }
        if (count < 0) {
            return Failure{from_errno(path, errno)};
        }
        if (count == 0) {
            return text;
        }
        text.append(buffer.data(), static_cast<std::size_t>(count));
        if (text.size() > limit) { // it grew while it was read
            return Failure{FileFault{FileFault::Kind::TooLarge, path, text.size(), limit, 0}};
        }
    }
}

std::string size_text(std::uintmax_t bytes) {
    constexpr std::uintmax_t mebibyte = std::uintmax_t{1} << 20U;
    if (bytes >= mebibyte) {
        return fmt::format("{:.1f} MiB",
                           static_cast<double>(bytes) / static_cast<double>(mebibyte));
    }
    return fmt::format("{} bytes", bytes);
}

std::string message_of(const FileFault& fault) {
    switch (fault.kind) {
    case FileFault::Kind::Missing:
        return fault.path.empty() ? "the name of a file is empty" : "there is no such file";
    case FileFault::Kind::Directory: return "this is a folder, not a file";
    case FileFault::Kind::NotOrdinary: return "this is a device or a pipe, not an ordinary file";
    case FileFault::Kind::TooLarge: return too_large(size_text(fault.size), size_text(fault.limit));
    case FileFault::Kind::NotPermitted: return "you are not permitted to read this file";
    case FileFault::Kind::Unreadable:
        return "cannot be read: " + std::generic_category().message(fault.error);
    }
    return {};
}

} // namespace

std::string too_large(std::string_view size, std::string_view limit) {
    return fmt::format("the file is too large: {}, at most {} are read", size, limit);
}

Result<std::string, FileFault> read_text_file(const std::string& path, std::size_t limit) {
    if (path.empty() || path.find('\0') != std::string::npos) {
        return Failure{from_errno(path, ENOENT)};
    }
    struct stat status {};
    if (::stat(path.c_str(), &status) != 0) {
        return Failure{from_errno(path, errno)};
    }
    if (auto fault = judge(path, status, limit)) {
        return Failure{*fault};
    }
    const OpenFile file{path};
    if (!file.is_open() || ::fstat(file.descriptor(), &status) != 0) {
        return Failure{from_errno(path, errno)};
    }
    if (auto fault = judge(path, status, limit)) { // another file may have taken its place
        return Failure{*fault};
    }
    return read_all(path, file, limit);
}

Diagnostic to_diagnostic(const FileFault& fault) {
    return {Severity::Error, {printable(fault.path), 0, 0, 0}, {}, message_of(fault), {}};
}

} // namespace thawslip

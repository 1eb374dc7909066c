#pragma once

#include "base/diagnostic.h"
#include "base/result.h"

#include <cstddef>
#include <cstdint>
#include <string>
#include <string_view>

namespace thawslip {

/// Why a file was not read.
struct FileFault {
    enum class Kind {
        Missing,
        Directory,
        NotOrdinary, ///< a device, a pipe, a socket
        TooLarge,
        NotPermitted,
        Unreadable, ///< the system failed: see `error`
    };
    Kind kind = Kind::Missing;
    std::string path;
    std::uintmax_t size = 0; ///< bytes, for TooLarge
    std::size_t limit = 0;   ///< bytes, for TooLarge
    int error = 0;           ///< errno, for NotPermitted and Unreadable
};

/// The bytes of an ordinary file of at most `limit` bytes. A larger one is refused by its size,
/// unread; a device or pipe is never opened, so nothing can hang.
Result<std::string, FileFault> read_text_file(const std::string& path, std::size_t limit);

/// That a text of `size` is larger than `limit`, both with their units.
std::string too_large(std::string_view size, std::string_view limit);

/// The fault as a cook reads it, placed at the file.
Diagnostic to_diagnostic(const FileFault& fault);

} // namespace thawslip

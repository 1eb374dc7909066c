#pragma once

#include <cstdio>
#include <string>
#include <string_view>

namespace thawslip::app {

/// A file that appears whole or not at all: written under another name in the same folder,
/// synced, and renamed when `commit` is called. Destroyed before that, it leaves nothing behind.
/// The name "-" is standard output, where nothing can be taken back.
class WholeFile {
public:
    /// \throws SystemFailure when the folder cannot be written or `path` is no ordinary file
    explicit WholeFile(std::string path);
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;
    ~WholeFile();

    void write(std::string_view bytes); ///< \throws SystemFailure, on a full disk for one
    void commit();                      ///< \throws SystemFailure

private:
    [[noreturn]] void fail(const char* doing) const;

    std::string path_;
    std::string temporary_;
    int descriptor_ = -1;
    std::string buffer_;
    void flush();
};

/// Writes all of `bytes` to `path` as a WholeFile.
void write_whole_file(const std::string& path, std::string_view bytes);

} // namespace thawslip::app

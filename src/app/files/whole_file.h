#pragma once

#include <cstdio>
#include <string>
#include <string_view>

namespace thawslip::app {

/// A file that appears whole or not at all: it is written without a name, synced, and put into
/// its place by `commit`. Destroyed or killed before that, it leaves nothing behind; killed within
/// a commit over an older file, at most a hidden name beside it. Where a file system has no
/// nameless files, it has that hidden name from the start.
/// A symbolic link stays one: what it leads to is written. The name "-" is standard output, where
/// nothing can be taken back.
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
    void flush();
    void take_place();

    std::string path_;      ///< as the user named it
    std::string place_;     ///< where its links lead; empty: standard output
    std::string temporary_; ///< its name until then; empty: it has none
    int descriptor_ = -1;
    std::string buffer_;
};

/// Writes all of `bytes` to `path` as a WholeFile.
void write_whole_file(const std::string& path, std::string_view bytes);

} // namespace thawslip::app

#pragma once

#include <functional>
#include <string>
#include <string_view>

namespace thawslip::app {

/// Who may read a file that is new; one that is replaced keeps its permissions.
enum class Readers {
    AsUsual,    ///< as the user has it set (umask(2))
    OwnerAlone, ///< mode 0600
};

/// A file that appears whole or not at all: it is written without a name, synced, and put into
/// its place by `commit`. Destroyed or killed before that, it leaves nothing behind; killed within
/// a commit over an older file, at most a hidden name beside it. Where a file system has no
/// nameless files, it has that hidden name from the start.
/// A symbolic link stays one: what it leads to is written. The name "-" is standard output, where
/// nothing can be taken back.
class WholeFile {
public:
    /// \throws SystemFailure when the folder cannot be written or `path` is no ordinary file
    explicit WholeFile(std::string path, Readers readers = Readers::AsUsual);
    WholeFile(const WholeFile&) = delete;
    WholeFile& operator=(const WholeFile&) = delete;
    ~WholeFile();

    void write(std::string_view bytes); ///< \throws SystemFailure, on a full disk for one
    void commit();                      ///< \throws SystemFailure
    /// The same, where `may` still says so when all is on the disk but for the name: as late as can
    /// be. \returns whether it did
    bool commit_if(const std::function<bool()>& may);

private:
    [[noreturn]] void fail(const char* doing) const;
    void flush();
    void make_ready();
    void take_place();

    std::string path_; ///< as the user named it
    Readers readers_;
    std::string place_;     ///< where its links lead; empty: standard output
    std::string temporary_; ///< its name until then; empty: it has none
    int descriptor_ = -1;
    std::string buffer_;
};

/// Writes all of `bytes` to `path` as a WholeFile.
void write_whole_file(const std::string& path, std::string_view bytes,
                      Readers readers = Readers::AsUsual);

} // namespace thawslip::app

#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::app {

/// Whether `path` is there and is no empty folder: nothing may take its name.
bool holds_something(const std::string& path);

/// A folder that appears whole or not at all: filled under another name beside it, synced, and
/// renamed when `commit` is called. Destroyed before that, it leaves nothing behind; a program
/// that is killed leaves a folder whose name begins with `.thawslip-`. For its owner alone: folders
/// of mode 0700, files of mode 0600.
class WholeFolder {
public:
    /// \throws SystemFailure when `path` is there and is no empty folder, or cannot be made
    explicit WholeFolder(std::string path);
    WholeFolder(const WholeFolder&) = delete;
    WholeFolder& operator=(const WholeFolder&) = delete;
    ~WholeFolder();

    void add_folder(const std::string& name);                      ///< \throws SystemFailure
    void add_file(const std::string& name, std::string_view text); ///< \throws SystemFailure
    /// \throws SystemFailure, also when something was put into `path` meanwhile
    void commit();

private:
    std::string path_;
    std::string temporary_;
    std::vector<std::string> files_;   ///< what was made in it so far
    std::vector<std::string> folders_; ///< the same, those that hold others first
};

} // namespace thawslip::app

#pragma once

#include "archive/values.h"
#include "base/result.h"

#include <string>
#include <vector>

namespace thawslip::app {

/// Whether a stock or a layout is named by a file of the cook's own ("/" in it, or ".toml" at its
/// end) and not by the name of one that comes with the program.
bool is_file_name(const std::string& name_or_file);

/// The cook's own stock and layout files of one print. Each is read once, so that what is laid
/// out is what is remembered; those that the archive kept are not read from the disk at all.
class OwnFiles {
public:
    OwnFiles() = default;
    explicit OwnFiles(std::vector<archive::SetupFile> kept) : files_{std::move(kept)} {}

    /// \returns the file's text, or why it cannot be read, as it is shown to the user
    /// \throws SystemFailure where it may not be read
    Result<std::string, std::string> text_of(const std::string& file);

    const std::vector<archive::SetupFile>& all() const { return files_; }
    friend bool operator==(const OwnFiles&, const OwnFiles&) = default;

private:
    std::vector<archive::SetupFile> files_;
};

} // namespace thawslip::app

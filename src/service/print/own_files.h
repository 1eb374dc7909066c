#pragma once

#include "archive/values.h"
#include "service/print/surroundings.h"

#include <string>
#include <vector>

namespace thawslip::service {

/// Whether a stock or a layout is named by a file of the cook's own ("/" in it, or ".toml" at its
/// end) and not by the name of one that comes with the program.
bool is_file_name(const std::string& name_or_file);

/// What a stock or layout is called that stands in `file`: its name without folder and ending.
std::string name_in(const std::string& file);

/// The cook's own stock and layout files of one print. Each is read once, so that what is laid
/// out is what is remembered; those that the archive kept are not read from the disk at all.
class OwnFiles {
public:
    OwnFiles() = default;
    explicit OwnFiles(std::vector<archive::SetupFile> kept) : files_{std::move(kept)} {}

    /// \returns the file's text, or why it cannot be read
    Result<std::string, Diagnostic> text_of(const std::string& file, const Surroundings& around);
    /// The text, where it has been read.
    const std::string* known(const std::string& file) const;

    const std::vector<archive::SetupFile>& all() const { return files_; }
    friend bool operator==(const OwnFiles&, const OwnFiles&) = default;

private:
    std::vector<archive::SetupFile> files_;
};

} // namespace thawslip::service

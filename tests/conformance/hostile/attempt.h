#pragma once

#include "support/command.h"

#include <set>
#include <string>

namespace thawslip::test_support {

inline const std::string sample_day = THAWSLIP_SOURCE_DIR "/samples/orchard-day.toml";

/// A folder with a day in it, where the program is run with bounded memory and time.
class Attempts {
public:
    Attempts();

    /// Runs `thawslip` with `arguments`, which may redirect, in the folder. `before` is shell: what
    /// is set or limited first; `program` are the words that start it.
    /// \returns what it did; status 124 when it had to be stopped
    Outcome run(const std::string& arguments, const std::string& before = "",
                const std::string& program = shell_word(THAWSLIP_PROGRAM)) const;

    std::string operator/(const std::string& name) const { return folder_ / name; }
    const std::filesystem::path& path() const { return folder_.path(); }

    /// Takes the folder's present files for granted in `left_behind`.
    void settle() { known_ = names(); }
    /// Names of the files that have come since, hidden ones too, one after the other.
    std::string left_behind() const;

private:
    std::set<std::string> names() const;

    ScratchFolder folder_;
    ScratchFolder data_;
    std::set<std::string> known_;
};

inline bool says(const std::string& text, const std::string& words) {
    return text.find(words) != std::string::npos;
}

} // namespace thawslip::test_support

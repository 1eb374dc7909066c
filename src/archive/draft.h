#pragma once

#include <string>

namespace thawslip::archive {

/// Makes the folder and those it stands in, mode 0700. Those of others are left as they are.
void make_folders(const std::string& folder);

/// A file of another name beside `file`, of mode 0600, gone again unless it takes a name.
/// Everything throws ArchiveFailure, CannotOpen, where it cannot be done.
class Draft {
public:
    explicit Draft(const std::string& file);
    Draft(const Draft&) = delete;
    Draft& operator=(const Draft&) = delete;
    ~Draft();
    const std::string& name() const { return name_; }

    void take_name() const;  ///< unless there is such a file by now
    void take_place() const; ///< also of a file that is there

private:
    std::string file_;
    std::string name_;
};

} // namespace thawslip::archive

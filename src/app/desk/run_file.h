#pragma once

#include <memory>
#include <optional>
#include <string>

namespace thawslip::app {

/// A desk that runs, as others find it.
struct RunningDesk {
    int process = 0;
    int port = 0;
    std::string key;
};

/// The file that says which desk serves a folder, for its owner alone (mode 0600). Whoever has it
/// holds a lock that ends with the program, however that ends, so a file that was left over stands
/// in nobody's way.
class RunFile {
public:
    /// Takes the file of a folder, or finds who has it.
    /// \param folder its whole path \param other is filled where another desk has it
    /// \returns the file; nothing where another desk has it
    /// \throws SystemFailure also where the other desk does not say where it is
    static std::unique_ptr<RunFile> take(const std::string& folder,
                                         std::optional<RunningDesk>& other);
    RunFile(const RunFile&) = delete;
    RunFile& operator=(const RunFile&) = delete;
    ~RunFile(); ///< takes the file away

    void say(const RunningDesk& desk); ///< \throws SystemFailure

private:
    RunFile(std::string place, int descriptor);
    std::string place_;
    int descriptor_;
};

/// Where the codes of a folder's desk are kept (app/desk/once_code.h).
std::string codes_of(const std::string& folder);

} // namespace thawslip::app

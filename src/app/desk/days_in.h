#pragma once

#include <cstdint>
#include <map>
#include <string>
#include <vector>

namespace thawslip::app {

/// Which files of a folder are descriptions of days: those ending in .toml that have a table of a
/// day or of a package, whatever else is wrong with them. Layouts, stocks and settings have none. A
/// file that has not changed since is not read again.
class DaysIn {
public:
    /// \param always a name that counts as one whatever stands in it; empty: none
    DaysIn(std::string folder, std::string always);

    /// In the order of the alphabet; none where the folder is not there.
    /// \throws SystemFailure where it may not be looked into
    std::vector<std::string> names();

private:
    struct Known {
        std::int64_t changed = 0; ///< nanoseconds, of the system's file clock
        std::uintmax_t size = 0;
        bool is_day = false;
    };
    bool is_day(const std::string& name);

    std::string folder_;
    std::string always_;
    std::map<std::string, Known> known_;
};

} // namespace thawslip::app

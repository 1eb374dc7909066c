#pragma once

#include "desk/machine.h"
#include "service/day/day_summary.h"

#include <map>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::desk {

/// A day of the folder, as a list says it.
struct ListedDay {
    int number = 0;
    std::string name;
    service::DaySummary summary;
};

/// The days of one folder by their numbers, which is all that a page knows of files. A number is
/// given once and stays while the program runs, whatever becomes of the file.
class DayList {
public:
    /// Descriptions of days, the newest first; those without a date last. Files that are something
    /// else are not among them. No more than a thousand files are looked at.
    std::vector<ListedDay> all(const Folder& folder);

    /// The number of a name, given now where it had none.
    int number_of(const std::string& name);
    /// The name of a number; nothing where it has not been given.
    std::optional<std::string> name_of(int number) const;

private:
    const service::DaySummary& summary_of(const std::string& name, const std::string& text);

    struct Known {
        std::string text;
        service::DaySummary summary;
    };
    std::vector<std::string> names_; ///< by number, from 1
    std::map<std::string, Known> known_;
};

} // namespace thawslip::desk

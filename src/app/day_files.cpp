#include "app/day_files.h"

#include "app/clock.h"
#include "app/input_file.h"

namespace thawslip::app {

Days read_days(const std::vector<std::string>& files, const Settings& settings, Ids ids) {
    // A description is some kilobytes; a megabyte is a mistake, and more could fill the memory.
    constexpr std::size_t largest_description = std::size_t{1} << 20U;
    std::vector<DayText> texts;
    Diagnostics unreadable;
    for (const auto& file : files) {
        auto text = read_input(file, largest_description);
        if (text) {
            texts.push_back({file, std::move(text).value()});
        } else {
            unreadable.push_back(text.fault());
        }
    }
    auto by = settings;
    by.kitchen.today = today();
    auto days = plan_days(texts, by, ids);
    days.diagnostics.insert(days.diagnostics.begin(), unreadable.begin(), unreadable.end());
    return days;
}

} // namespace thawslip::app

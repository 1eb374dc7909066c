#include "desk/day_list.h"

#include <algorithm>

namespace thawslip::desk {

std::vector<ListedDay> DayList::all(const Folder& folder) {
    constexpr std::size_t most_files = 1000;
    auto names = folder.names();
    names.resize(std::min(names.size(), most_files));
    std::vector<ListedDay> days;
    for (const auto& name : names) {
        const auto text = folder.read(name);
        if (!text) {
            continue; // gone since
        }
        const int number = number_of(name);
        const auto& summary = summary_of(name, *text);
        if (summary.is_day) {
            days.push_back({number, name, summary});
        }
    }
    std::ranges::stable_sort(days, std::ranges::greater{},
                             [](const ListedDay& day) { return day.summary.made; });
    return days;
}

int DayList::number_of(const std::string& name) {
    const auto found = std::ranges::find(names_, name);
    const auto place = found - names_.begin();
    if (found == names_.end()) {
        names_.push_back(name);
    }
    return static_cast<int>(place) + 1;
}

std::optional<std::string> DayList::name_of(int number) const {
    const auto place = static_cast<std::size_t>(number) - 1;
    return number > 0 && place < names_.size() ? std::optional{names_[place]} : std::nullopt;
}

const service::DaySummary& DayList::summary_of(const std::string& name, const std::string& text) {
    auto& known = known_[name];
    if (known.text != text || text.empty()) {
        known = {text, service::summary_of(text)};
    }
    return known.summary;
}

} // namespace thawslip::desk

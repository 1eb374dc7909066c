#include "app/desk/days_in.h"

#include "base/place.h"
#include "base/split.h"
#include "base/system_failure.h"
#include "base/text_file.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <string_view>
#include <system_error>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// Whether a line is the head of a table called `name`, or of one below it: "[day]", "[[package]]",
/// "[package.thaw]"; or a key of such a table without a head, "day.made".
bool names_table(std::string_view line, std::string_view name) {
    const auto begin = line.find_first_not_of(" \t[\"'");
    if (begin == line.npos || !line.substr(begin).starts_with(name)) {
        return false;
    }
    const auto behind = line.substr(begin + name.size());
    return !behind.empty() && std::string_view{".]\"' =\t"}.find(behind.front()) != behind.npos;
}

bool describes_a_day(std::string_view text) {
    while (!text.empty()) {
        const auto line = take_line(text);
        if (names_table(line, "day") || names_table(line, "package")) {
            return true;
        }
    }
    return false;
}

bool reads_as_day(const std::string& file) {
    constexpr std::size_t largest = std::size_t{1} << 20U;
    const auto text = read_text_file(file, largest);
    return text && describes_a_day(text.value());
}

} // namespace

DaysIn::DaysIn(std::string folder, std::string always)
    : folder_{std::move(folder)}, always_{std::move(always)} {}

bool DaysIn::is_day(const std::string& name) {
    const auto file = fs::path{folder_} / name;
    std::error_code error;
    if (name.front() == '.' || !stands_in(file.string(), folder_) ||
        !fs::is_regular_file(file, error)) {
        return false;
    }
    if (name == always_) {
        return true;
    }
    if (file.extension() != ".toml") {
        return false;
    }
    auto& known = known_[name];
    const auto changed = fs::last_write_time(file, error).time_since_epoch().count();
    const auto size = fs::file_size(file, error);
    if (known.changed != changed || known.size != size) {
        known = {changed, size, reads_as_day(file.string())};
    }
    return known.is_day;
}

std::vector<std::string> DaysIn::names() {
    std::vector<std::string> names;
    std::error_code error;
    for (fs::directory_iterator entry{folder_, error}; !error && entry != fs::directory_iterator{};
         entry.increment(error)) {
        names.push_back(entry->path().filename().string());
    }
    if (error && error != std::errc::no_such_file_or_directory) {
        throw SystemFailure{fmt::format("cannot look into {}: {}", folder_, error.message())};
    }
    std::erase_if(names, [this](const std::string& name) { return !is_day(name); });
    std::ranges::sort(names);
    return names;
}

} // namespace thawslip::app

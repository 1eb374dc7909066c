#include "app/files/day_files.h"

#include "files/input_file.h"

#include <filesystem>

namespace thawslip::app {
namespace {

/// Where a description is found again; empty for what a pipe gave, which no name leads back to.
std::string lasting_file(const std::string& file) {
    std::error_code error;
    return std::filesystem::is_regular_file(file, error)
               ? std::filesystem::absolute(file).lexically_normal().string()
               : std::string{};
}

} // namespace

service::DayTexts read_texts(const std::vector<std::string>& files) {
    // A description is some kilobytes; a megabyte is a mistake, and more could fill the memory.
    constexpr std::size_t largest_description = std::size_t{1} << 20U;
    service::DayTexts days;
    for (const auto& file : files) {
        auto text = files::read_input(file, largest_description);
        if (text) {
            days.texts.push_back({file, std::move(text).value(), {}, lasting_file(file)});
        } else {
            days.unreadable.push_back(text.fault());
        }
    }
    return days;
}

Days read_days(const std::vector<std::string>& files, const Settings& settings) {
    return plan_days(read_texts(files), settings);
}

} // namespace thawslip::app

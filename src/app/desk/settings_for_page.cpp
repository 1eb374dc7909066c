#include "app/desk/settings_for_page.h"

#include "app/files/settings_file.h"
#include "app/files/text_if_there.h"
#include "app/files/whole_file.h"
#include "base/system_failure.h"

#include <filesystem>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

bool replace(const std::string& place, const std::optional<std::string>& before,
             const std::string& text) {
    if (place.empty()) {
        throw SystemFailure{"there is no home folder to keep settings in"};
    }
    std::error_code error; // where it fails, the file says so
    fs::create_directories(fs::path{place}.parent_path(), error);
    WholeFile whole{place};
    whole.write(text);
    return whole.commit_if([&] { return text_if_there(place, largest_settings) == before; });
}

} // namespace

desk::SettingsFile settings_for_page(const std::string& named) {
    const auto place = named.empty() ? usual_settings_file() : named;
    return {
        place,
        [place] { return place.empty() ? std::nullopt : text_if_there(place, largest_settings); },
        [place](const std::optional<std::string>& before, const std::string& text) {
            return replace(place, before, text);
        }};
}

} // namespace thawslip::app

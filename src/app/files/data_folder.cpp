#include "app/files/data_folder.h"

#include "app/progress_line.h"
#include "base/system_failure.h"
#include "files/shelf.h"

#include <cstdlib>
#include <fmt/format.h>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

fs::path program_folder() {
    std::error_code error;
    const auto program = fs::read_symlink("/proc/self/exe", error);
    return error ? fs::path{} : program.parent_path();
}

} // namespace

files::DataFolder find_data_folder() {
    if (const char* named = std::getenv("THAWSLIP_DATA")) {
        if (files::is_data_folder(named)) {
            return {named};
        }
        throw SystemFailure{fmt::format("THAWSLIP_DATA is \"{}\", but there is no layouts/stock "
                                        "and fonts/faces.toml in that folder",
                                        named)};
    }
    const auto place = program_folder().parent_path() / "share" / "thawslip";
    if (files::is_data_folder(place)) {
        return {place};
    }
    throw SystemFailure{fmt::format("the layouts and fonts that come with thawslip are not in {}; "
                                    "reinstall it, or name their folder in THAWSLIP_DATA",
                                    place.string())};
}

service::Surroundings surroundings(service::IdSource ids) {
    auto around = files::surroundings_in(find_data_folder, std::move(ids));
    around.progress = progress_line("laying out");
    return around;
}

} // namespace thawslip::app

#include "base/place.h"

#include <algorithm>
#include <filesystem>

namespace thawslip {
namespace {

namespace fs = std::filesystem;

/// The one name of a place, without links, dots and doubled slashes; empty where there is none.
fs::path canonical(const std::string& path) {
    std::error_code error;
    const auto end = end_of_links(path);
    const auto place = end ? fs::weakly_canonical(fs::absolute(*end, error), error) : fs::path{};
    return error ? fs::path{} : place;
}

} // namespace

std::optional<std::string> end_of_links(const std::string& path) {
    fs::path place = path;
    std::error_code none;
    constexpr int most_links = 40; // as Linux has it (path_resolution(7))
    for (int links = 0; fs::is_symlink(fs::symlink_status(place, none)); ++links) {
        if (links == most_links) {
            return std::nullopt;
        }
        place = place.parent_path() / fs::read_symlink(place, none);
    }
    return place.string();
}

bool is_same_place(const std::string& one, const std::string& other) {
    if (one.empty() || other.empty()) {
        return false;
    }
    std::error_code error;
    if (fs::equivalent(one, other, error) && !error) {
        return true;
    }
    const auto place = canonical(one);
    return !place.empty() && place == canonical(other);
}

bool stands_in(const std::string& file, const std::string& folder) {
    const auto place = canonical(file);
    const auto above = canonical(folder);
    return !place.empty() && !above.empty() &&
           std::mismatch(above.begin(), above.end(), place.begin(), place.end()).first ==
               above.end();
}

} // namespace thawslip

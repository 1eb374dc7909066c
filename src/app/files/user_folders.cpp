#include "app/files/user_folders.h"

#include "base/split.h"
#include "base/text_file.h"

#include <cstdlib>
#include <filesystem>
#include <optional>
#include <string_view>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

bool is_folder(const std::string& place) {
    std::error_code error;
    return fs::is_directory(place, error);
}

/// The value of XDG_DOCUMENTS_DIR in the text of user-dirs.dirs: lines as a shell has them, a value
/// in quotes that begins with "/" or "$HOME/", a backslash before what is meant as it stands.
std::optional<std::string> documents_in(std::string_view text) {
    constexpr std::string_view name = "XDG_DOCUMENTS_DIR=\"";
    std::optional<std::string> found;
    for (const auto& whole : lines_in(text)) {
        const auto line =
            std::string_view{whole}.substr(std::min(whole.find_first_not_of(" \t"), whole.size()));
        if (!line.starts_with(name)) {
            continue;
        }
        found.emplace();
        for (std::size_t at = name.size(); at < line.size() && line[at] != '"'; ++at) {
            at += line[at] == '\\' && at + 1 < line.size() ? 1U : 0U;
            *found += line[at];
        }
    }
    return found;
}

std::optional<std::string> named_documents(const std::string& home) {
    constexpr std::size_t most = std::size_t{1} << 16U;
    const auto file = user_place("XDG_CONFIG_HOME", ".config", "user-dirs.dirs");
    const auto text = read_text_file(file, most);
    auto named = text ? documents_in(text.value()) : std::nullopt;
    constexpr std::string_view at_home = "$HOME";
    if (named && named->starts_with(at_home)) {
        named = home + named->substr(at_home.size());
    }
    return named && named->starts_with('/') && is_folder(*named) ? named : std::nullopt;
}

} // namespace

std::string folder_in(const char* variable) {
    const char* value = std::getenv(variable);
    std::string folder = value != nullptr && value[0] == '/' ? value : "";
    while (folder.size() > 1 && folder.ends_with('/')) {
        folder.pop_back();
    }
    return folder;
}

std::string user_place(const char* variable, const std::string& otherwise,
                       const std::string& name) {
    if (const auto folder = folder_in(variable); !folder.empty()) {
        return (fs::path{folder} / name).string();
    }
    const auto home = folder_in("HOME");
    return home.empty() ? "" : (fs::path{home} / otherwise / name).string();
}

std::string documents_folder() {
    const auto home = folder_in("HOME");
    if (home.empty()) {
        return {};
    }
    if (auto named = named_documents(home)) {
        return *std::move(named);
    }
    auto usual = (fs::path{home} / "Documents").string();
    return is_folder(usual) ? usual : home;
}

} // namespace thawslip::app

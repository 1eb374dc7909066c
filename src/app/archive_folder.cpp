#include "app/archive_folder.h"

#include "app/whole_folder.h"
#include "base/text_file.h"
#include "service/archive/archive_folder.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <set>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// Whether a part of the name, below the folder itself, is a link.
bool leads_elsewhere(fs::path folder, const std::string& name) {
    std::error_code error;
    return std::ranges::any_of(fs::path{name}, [&](const auto& part) {
        return fs::is_symlink(fs::symlink_status(folder /= part, error));
    });
}

Result<std::string, Diagnostic> read_file_of(const std::string& folder, const std::string& name) {
    if (leads_elsewhere(folder, name)) {
        return Failure{
            Diagnostic{Severity::Error,
                       {folder},
                       {},
                       fmt::format("{} is a link, and nothing outside of the folder is read", name),
                       {}}};
    }
    auto text = read_text_file(folder + "/" + name, service::largest_archive_file);
    return text ? Result<std::string, Diagnostic>{std::move(text).value()}
                : Failure{to_diagnostic(text.fault())};
}

} // namespace

void write_archive_folder(const archive::Contents& contents, const std::string& folder,
                          const Progress& progress) {
    WholeFolder whole{folder};
    std::set<std::string> made = {""};
    const auto make = [&](const fs::path& path) {
        if (made.insert(path.string()).second) {
            whole.add_folder(path.string());
        }
    };
    make("days");
    make("prints");
    const auto files = service::archive_files(contents);
    std::size_t written = 0;
    for (const auto& [name, text] : files) {
        make(fs::path{name}.parent_path());
        whole.add_file(name, text);
        if (progress) {
            progress(++written, files.size());
        }
    }
    whole.commit();
}

service::Outcome<archive::Contents> read_archive_folder(const std::string& folder) {
    return service::read_archive_files(
        folder, [&folder](const std::string& name) { return read_file_of(folder, name); });
}

} // namespace thawslip::app

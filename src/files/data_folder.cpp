#include "files/data_folder.h"

#include "base/diagnostic.h"
#include "base/list.h"
#include "base/system_failure.h"
#include "base/text_file.h"
#include "toml/file_table.h"
#include "toml/reader.h"
#include "typeset/font_set.h"

#include <fmt/format.h>
#include <vector>

namespace thawslip::files {
namespace {

namespace fs = std::filesystem;

/// Debian's folders for TrueType faces; the first is where an installed Thawslip may bring its own.
std::vector<fs::path> font_folders(const DataFolder& data) {
    return {data.fonts(), "/usr/share/fonts/truetype", "/usr/local/share/fonts"};
}

std::string find_font(const DataFolder& data, const std::string& file) {
    for (const auto& folder : font_folders(data)) {
        std::error_code error;
        if (fs::is_regular_file(folder / file, error)) {
            return (folder / file).string();
        }
    }
    const char* hint =
        file.starts_with("clear-sans/") ? "; on Debian: apt-get install fonts-clear-sans"
        : file.starts_with("dejavu/")   ? "; on Debian: apt-get install fonts-dejavu-core"
                                        : "";
    throw SystemFailure{fmt::format("the font file {} is not installed{}", file, hint)};
}

std::vector<std::string> chain(toml::Table& table, const toml::Key& key, const DataFolder& data) {
    return mapped(table.strings(key, 16),
                  [&data](const toml::Text& text) { return find_font(data, text.value); });
}

} // namespace

bool is_data_folder(const fs::path& root) {
    std::error_code error;
    return fs::is_directory(root / "layouts" / "stock", error) &&
           fs::is_regular_file(root / "fonts" / "faces.toml", error);
}

typeset::FontSet load_fonts(const DataFolder& data) {
    const auto path = (data.fonts() / "faces.toml").string();
    auto text = read_text_file(path, std::size_t{1} << 16U);
    if (!text) {
        throw SystemFailure{to_diagnostic(text.fault()).message + ": " + path};
    }
    Diagnostics faults;
    const auto document = toml::parse(std::move(text).value(), path, faults);
    toml::Reader reader{document, faults};
    auto table = reader.root();
    const typeset::FontFiles files{chain(table, "regular", data), chain(table, "medium", data),
                                   chain(table, "bold", data)};
    table.refuse_unknown();
    if (has_errors(faults)) {
        throw SystemFailure{to_text(faults.front(), document.text())};
    }
    auto fonts = typeset::make_font_set(files);
    if (!fonts) {
        throw SystemFailure{fonts.fault()};
    }
    return std::move(fonts).value();
}

} // namespace thawslip::files

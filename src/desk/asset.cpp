#include "desk/asset.h"

#include "base/list.h"

#include <array>
#include <utility>
#include <vector>

namespace thawslip {

// The page's files by their names, made by CMakeLists.txt.
using NamedText = std::pair<std::string_view, std::string_view>;
std::span<const NamedText> desk_page_files();

namespace desk {
namespace {

std::string_view type_of(std::string_view name) {
    constexpr std::array<NamedText, 4> types = {{{".html", "text/html; charset=utf-8"},
                                                 {".css", "text/css; charset=utf-8"},
                                                 {".js", "text/javascript; charset=utf-8"},
                                                 {".svg", "image/svg+xml"}}};
    return std::ranges::find_if(types,
                                [name](const auto& type) { return name.ends_with(type.first); })
        ->second;
}

Asset asset_of(const NamedText& file) {
    const auto& [path, text] = file;
    return {path == "/index.html" ? "/" : path, type_of(path), text};
}

} // namespace

std::span<const Asset> assets() {
    static const auto all = mapped(desk_page_files(), asset_of);
    return all;
}

} // namespace desk
} // namespace thawslip

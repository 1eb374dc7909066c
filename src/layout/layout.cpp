#include "layout/layout.h"

#include <algorithm>
#include <array>

namespace thawslip::layout {

const Area* Layout::area(std::string_view wanted) const {
    const auto found = std::ranges::find(areas, wanted, &Area::name);
    return found == areas.end() ? nullptr : &*found;
}

const Area* Layout::area_with(std::string_view field) const {
    const auto found = std::ranges::find_if(areas, [field](const Area& area) {
        const auto* text = text_of(area);
        return text != nullptr && takes(*text, field);
    });
    return found == areas.end() ? nullptr : &*found;
}

bool must_stay(std::string_view field) {
    constexpr std::array<std::string_view, 11> fields = {
        "raw",         "dish", "made",   "use-by",   "thaw",    "finish",
        "local-rules", "rows", "dishes", "freezing", "shopping"};
    return std::ranges::find(fields, field) != fields.end();
}

} // namespace thawslip::layout

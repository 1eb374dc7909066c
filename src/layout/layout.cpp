#include "layout/layout.h"

#include "wording/print_fields.h"

#include <algorithm>

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

std::vector<std::string> unplaced(const wording::Print& print, const Layout& layout) {
    std::vector<std::string> names;
    for (const auto& [name, stays] : wording::fields_of(print.kind)) {
        const auto* said = print.field(name);
        if (stays == wording::Stays::Always && said != nullptr && !said->paragraphs.empty() &&
            layout.area_with(name) == nullptr) {
            names.push_back(name);
        }
    }
    return names;
}

} // namespace thawslip::layout

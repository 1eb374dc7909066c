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

namespace {

/// Whether the layout has a place for a field, or for others that say the same.
bool has_place(const Layout& layout, const wording::FieldOfKind& field) {
    const auto is_placed = [&layout](const std::string& name) {
        return layout.area_with(name) != nullptr;
    };
    return is_placed(field.name) ||
           (!field.said_by.empty() && std::ranges::all_of(field.said_by, is_placed));
}

} // namespace

std::vector<std::string> unplaced(const wording::Print& print, const Layout& layout) {
    std::vector<std::string> names;
    for (const auto& field : wording::fields_of(print.kind)) {
        const auto* said = print.field(field.name);
        if (field.stays == wording::Stays::Always && said != nullptr && !said->paragraphs.empty() &&
            !has_place(layout, field)) {
            names.push_back(field.name);
        }
    }
    return names;
}

} // namespace thawslip::layout

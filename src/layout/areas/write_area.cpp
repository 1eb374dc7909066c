#include "layout/areas/write_area.h"

namespace thawslip::layout {

void read(toml::Table& /*table*/, const PrintFields& /*fields*/, WriteArea& /*area*/) {}

Result<Content, ContentFault> prepare(const WriteArea& /*area*/, const wording::Print& /*print*/,
                                      Shaper& /*shaper*/) {
    return Content{true};
}

Length natural_width(const Content& /*content*/, const WriteArea& /*area*/, TypeSize /*type*/) {
    return {};
}

Extent measure(const Content& /*content*/, const WriteArea& /*area*/, TypeSize /*type*/,
               Length /*width*/, RowHeights /*rows*/) {
    return {.height = {}, .takes = Takes::AllThereIs};
}

/// Lines to write on, as many as there is room for; none where a hand would not fit.
std::vector<Item> draw(const Content& /*content*/, const WriteArea& /*area*/, TypeSize /*type*/,
                       Rect place, const Ink& /*ink*/) {
    constexpr Length apart = Length::millimetres(9);
    constexpr Length thickness = Length::points(0.5);
    std::vector<Item> lines;
    for (Length y = place.top() + apart; y + thickness <= place.bottom(); y += apart) {
        lines.emplace_back(Rule{{{place.left(), y}, {place.size.width, thickness}}});
    }
    return lines;
}

} // namespace thawslip::layout

#include "layout/areas/write_area.h"

#include "toml/file_table.h"

namespace thawslip::layout {
namespace {

constexpr Length apart = Length::millimetres(9); // of lines that a pen writes on
constexpr Length thickness = Length::points(0.5);
constexpr std::size_t fewest_lines = 2;

/// What the heading takes of the room above the first line: its own place, less what a pen needs.
Length heading_height(const Content& content, const WriteArea& area, TypeSize type, Length width) {
    return content.has_words()
               ? measure(content, area.heading, type, width, RowHeights::Given).height * 0.5
               : Length{};
}

} // namespace

void read(toml::Table& table, const PrintFields& fields, WriteArea& area) {
    if (table.has("words")) {
        read(table, fields, area.heading);
    }
}

Result<Content, ContentFault> prepare(const WriteArea& area, const wording::Print& print,
                                      Shaper& shaper) {
    auto heading = prepare(area.heading, print, shaper);
    return heading && !heading.value().is_there() ? Content{true} : heading;
}

Length natural_width(const Content& /*content*/, const WriteArea& /*area*/, TypeSize /*type*/) {
    return {};
}

Extent measure(const Content& /*content*/, const WriteArea& /*area*/, TypeSize /*type*/,
               Length /*width*/, RowHeights /*rows*/) {
    return {.height = {}, .takes = Takes::AllThereIs};
}

/// Lines to write on, as many as there is room for; none, and no heading, where that is for less
/// than two.
std::vector<Item> draw(const Content& content, const WriteArea& area, TypeSize type, Rect place,
                       const Ink& ink) {
    const Length width = place.size.width;
    std::vector<Item> lines;
    for (Length y = place.top() + heading_height(content, area, type, width) + apart;
         y + thickness <= place.bottom(); y += apart) {
        lines.emplace_back(Rule{{{place.left(), y}, {width, thickness}}});
    }
    if (lines.size() < fewest_lines) {
        return {};
    }
    if (content.has_words()) {
        for (auto& item : draw(content, area.heading, type, place, ink)) {
            lines.push_back(std::move(item));
        }
    }
    return lines;
}

} // namespace thawslip::layout

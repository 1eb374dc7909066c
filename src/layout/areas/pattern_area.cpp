#include "layout/areas/pattern_area.h"

#include "toml/file_table.h"

#include <algorithm>
#include <array>
#include <cmath>

namespace thawslip::layout {
namespace {

using namespace literals;

/// Bars and squares are of this size at least: finer ones run together on a worn printer.
constexpr Length finest = Length::millimetres(0.6);

/// Bars and the gaps between them: as many at every size, for a dish has one pattern on label and
/// card, and no more than the smallest label has room for; odd, so that ink stands at both ends.
constexpr int stripes = 3;

Rect part(Rect place, double left, double top, double width, double height) {
    const auto [w, h] = place.size;
    return {{place.left() + w * left, place.top() + h * top}, {w * width, h * height}};
}

/// Every other field of a place that is parted across and down, from the top left one on.
std::vector<Item> chequers(Rect place, int across, int down) {
    std::vector<Item> items;
    for (int row = 0; row < down; ++row) {
        for (int column = row % 2; column < across; column += 2) {
            items.emplace_back(Rule{part(place, double(column) / across, double(row) / down,
                                         1.0 / across, 1.0 / down)});
        }
    }
    return items;
}

std::vector<Item> solid(Rect place) {
    return chequers(place, 1, 1);
}

std::vector<Item> lying_bars(Rect place) {
    return chequers(place, 1, stripes);
}

std::vector<Item> standing_bars(Rect place) {
    return chequers(place, stripes, 1);
}

std::vector<Item> chequered(Rect place) {
    return chequers(place, stripes, stripes);
}

std::vector<Item> hollow(Rect place) {
    return {Outline{place.inset(finest / 2), finest, {}}};
}

std::vector<Item> hollow_with_a_core(Rect place) {
    auto items = hollow(place);
    items.emplace_back(Rule{part(place, 0.33, 0.33, 0.34, 0.34)});
    return items;
}

constexpr std::array<std::vector<Item> (*)(Rect), patterns> drawn = {
    solid, lying_bars, hollow, chequered, standing_bars, hollow_with_a_core};

} // namespace

void read(toml::Table& table, const PrintFields& /*fields*/, PatternArea& area) {
    area.height = table.length({"height", "\"3.9 mm\""}, {2.0_mm, 60.0_mm}).value_or(Length{});
}

Result<Content, ContentFault> prepare(const PatternArea& /*area*/, const wording::Print& print,
                                      Shaper& /*shaper*/) {
    const auto* mark = print.field(wording::field_name::mark);
    if (mark == nullptr || mark->paragraphs.empty()) {
        return Content{};
    }
    return Content::of_figure(mark->paragraphs.front().number);
}

Length natural_width(const Content& /*content*/, const PatternArea& /*area*/, TypeSize /*type*/) {
    return {};
}

Extent measure(const Content& /*content*/, const PatternArea& area, TypeSize /*type*/,
               Length /*width*/, RowHeights /*rows*/) {
    if (area.height > Length{}) {
        return {.height = area.height, .first_baseline = area.height};
    }
    return {.height = {}, .takes = Takes::AllThereIs};
}

std::vector<Item> draw(const Content& content, const PatternArea& /*area*/, TypeSize /*type*/,
                       Rect place, const Ink& /*ink*/) {
    if (!content.is_there()) {
        return {};
    }
    const auto which = (content.figure() - 1) % patterns;
    return drawn.at(static_cast<std::size_t>(which))(place);
}

} // namespace thawslip::layout

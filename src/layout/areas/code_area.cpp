#include "layout/areas/code_area.h"

#include <cmath>

namespace thawslip::layout {
namespace {

/// Moves a coordinate to the nearest printer dot, so that every module edge falls on one.
Length on_dots(Length x, code::PrinterDots printer) {
    return dot(printer) * std::round(x / dot(printer));
}

} // namespace

Length dot(code::PrinterDots printer) {
    return Length::inches(1.0 / printer.per_inch);
}

void read(toml::Table& /*table*/, const PrintFields& /*fields*/, CodeArea& /*area*/) {}

Result<Content, ContentFault> prepare(const CodeArea& /*area*/, const wording::Print& print,
                                      Shaper& /*shaper*/) {
    return Content{print.has_code};
}

Length natural_width(const Content& /*content*/, const CodeArea& /*area*/, TypeSize /*type*/) {
    return {};
}

/// A code is square: where its rows follow their content they grow to its width; where they are
/// given, it takes what is there.
Extent measure(const Content& /*content*/, const CodeArea& /*area*/, TypeSize /*type*/,
               Length width, RowHeights rows) {
    return {.height = rows == RowHeights::FollowContent ? width : Length{},
            .takes = Takes::ASquare};
}

/// The symbol with its quiet zone in the middle of its place.
std::vector<Item> draw(const Content& /*content*/, const CodeArea& /*area*/, TypeSize /*type*/,
                       Rect place, const Ink& ink) {
    if (ink.symbol == nullptr) {
        return {};
    }
    const auto& symbol = ink.symbol->symbol;
    const Length module = ink.symbol->module;
    const Length side = module * symbol.side;
    const Point corner{place.left() + (place.size.width - side) / 2,
                       place.top() + (place.size.height - side) / 2};
    return {ModuleGrid{{on_dots(corner.x, ink.printer), on_dots(corner.y, ink.printer)},
                       module,
                       symbol.side,
                       symbol.dark}};
}

} // namespace thawslip::layout

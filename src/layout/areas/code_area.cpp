#include "layout/areas/code_area.h"

#include "layout/areas/align_names.h"
#include "layout/areas/orders.h"
#include "layout/areas/word_choice.h"
#include "toml/file_table.h"

#include <algorithm>
#include <cmath>
#include <span>

namespace thawslip::layout {
namespace {

using namespace literals;

const std::array<Named<code::Level>, 4> levels = {{{{"L", {"low"}}, code::Level::Low},
                                                   {{"M", {"medium"}}, code::Level::Medium},
                                                   {{"Q", {"quartile"}}, code::Level::Quartile},
                                                   {{"H", {"high"}}, code::Level::High}}};

/// Moves a coordinate to the nearest printer dot, so that every module edge falls on one.
Length on_dots(Length x, code::PrinterDots printer) {
    return dot(printer) * std::round(x / dot(printer));
}

/// Asks for the first of these squares that its columns are wide enough for.
Content asking(std::span<const Length> sides) {
    auto content = Content::of_side(sides.front());
    if (sides.size() > 1) {
        content.add_shorter(asking(sides.subspan(1)));
    }
    return content;
}

} // namespace

Length dot(code::PrinterDots printer) {
    return Length::inches(1.0 / printer.per_inch);
}

void read(toml::Table& table, const PrintFields& /*fields*/, CodeArea& area) {
    const toml::Key least{"least_side", "\"26 mm\""};
    area.least_side = table.length(least, {10.0_mm, 200.0_mm}).value_or(Length{});
    area.shorten = read_orders(table);
    area.align = choice(table, "align", "an alignment", align_names, area.align);
    area.durable.level = choice(table, "level", "a level", levels, area.durable.level);
    area.durable.module =
        table.length({"module", "\"0.5 mm\""}, {0.2_mm, 3.0_mm}).value_or(area.durable.module);
    if (area.shorten.empty() && area.least_side > Length{}) {
        table.reader().error(table.path_of(least),
                             "a code with a least side has to say when it gives way",
                             {"add shorten = [1]"});
    }
    if (!area.shorten.empty() && area.least_side <= Length{}) {
        table.reader().error(table.path_of("shorten"), "a code that gives way has to say how far",
                             {"add least_side = \"26 mm\""});
    }
}

Result<Content, ContentFault> prepare(const CodeArea& area, const wording::Print& print,
                                      Shaper& /*shaper*/) {
    return print.has_code ? content_for(area, {}) : Content{};
}

Content content_for(const CodeArea& area, std::vector<Length> needed) {
    auto content = Content::of_side({});
    if (area.shorten.empty()) {
        return content;
    }
    std::erase_if(needed, [&area](Length side) { return side <= area.least_side; });
    needed.push_back(area.least_side);
    for (auto first = needed.begin(); first != needed.end(); ++first) {
        content.add_shorter(asking(std::span{first, needed.end()}));
    }
    return content;
}

Length natural_width(const Content& /*content*/, const CodeArea& /*area*/, TypeSize /*type*/) {
    return {};
}

/// A code is square: where its rows follow their content they grow to its width; where they are
/// given, it takes what is there. What its columns are too narrow for, it does not ask for.
Extent measure(const Content& content, const CodeArea& /*area*/, TypeSize /*type*/, Length width,
               RowHeights rows) {
    const auto* asks = &content;
    while (asks->side() > width && asks->shorter_forms() > 0) {
        asks = &asks->in(1);
    }
    const Length asked = asks->side() > Length{} ? std::min(width, asks->side()) : width;
    return {.height = rows == RowHeights::FollowContent ? asked : Length{},
            .takes = Takes::ASquare};
}

/// The symbol with its quiet zone in its place: halfway down, and across as the area says.
std::vector<Item> draw(const Content& /*content*/, const CodeArea& area, TypeSize /*type*/,
                       Rect place, const Ink& ink) {
    if (ink.symbol == nullptr) {
        return {};
    }
    const auto& symbol = ink.symbol->symbol;
    const Length module = ink.symbol->module;
    const Length side = module * symbol.side;
    const Length quiet = module * code::quiet_zone_modules;
    const Length spare = place.size.width - side - quiet * 2.0;
    const Point corner{place.left() + spare * share_before(area.align) + quiet,
                       place.top() + (place.size.height - side) / 2};
    return {ModuleGrid{{on_dots(corner.x, ink.printer), on_dots(corner.y, ink.printer)},
                       module,
                       symbol.side,
                       symbol.dark}};
}

} // namespace thawslip::layout

#include "layout/compose.h"

#include "base/parallel.h"
#include "layout/alike.h"
#include "layout/sheets/crop_marks.h"
#include "layout/sheets/margin_note.h"

#include <algorithm>
#include <cmath>

namespace thawslip::layout {
namespace {

Size room_of(const Stock& stock) {
    return stock.safe_at(0).size;
}

const Area* code_area(const Layout& layout) {
    const auto found = std::ranges::find(layout.areas, AreaKind::Code, &Area::kind);
    return found == layout.areas.end() ? nullptr : &*found;
}

Length dot(code::PrinterDots printer) {
    return Length::inches(1.0 / printer.per_inch);
}

Arrangement arrangement_of(const Fitted& fitted, const Layout& layout, const Stock& stock,
                           const typeset::FontSet& fonts) {
    return arrange(layout, fitted.contents, room_of(stock), fitted.solution.choice, fonts);
}

/// The side of the square that is left for the code of one print; nothing where it has none.
std::optional<Length> code_side(const Fitted& fitted, const Layout& layout, const Target& target,
                                const typeset::FontSet& fonts) {
    const auto* area = code_area(layout);
    if (area == nullptr) {
        return std::nullopt;
    }
    const auto index = static_cast<std::size_t>(area - layout.areas.data());
    if (!fitted.contents[index].code) {
        return std::nullopt;
    }
    const auto arrangement = arrangement_of(fitted, layout, target.stock, fonts);
    const auto& room = arrangement.areas[index].room.size;
    // One dot is kept back: placing the symbol on the dot grid may move it by half of one.
    return std::min(room.width, room.height) - dot(target.printer);
}

/// The code of one print, for the square that its area became.
std::optional<Why> choose_code(const Source& source, Fitted& fitted, Length side,
                               const Target& target) {
    auto symbol = code::choose_symbol(source.code_texts(fitted.print), side, target.printer,
                                      target.least_module);
    if (!symbol) {
        const auto print = source.print(fitted.print);
        return Why{CodeRefusal{print.dish, print.bag_id, symbol.fault(), print.where}};
    }
    if (code::can_read_back() && code::read_back(symbol.value().symbol) != symbol.value().text) {
        const auto print = source.print(fitted.print);
        return Why{UnreadableCode{print.dish, print.bag_id, print.where}};
    }
    fitted.symbol = std::move(symbol).value();
    return std::nullopt;
}

/// Moves a coordinate to the nearest printer dot, so that every module edge falls on one.
Length on_dots(Length x, code::PrinterDots printer) {
    return dot(printer) * std::round(x / dot(printer));
}

Length code_offset(Stand stand, Length spare) {
    switch (stand) {
    case Stand::Top: return {};
    case Stand::Middle: return spare / 2;
    case Stand::Bottom: return spare;
    }
    return {};
}

/// The symbol with its quiet zone in its area: centred across, standing as the area says.
ModuleGrid place_code(const code::SizedSymbol& sized, Stand stand, Rect room,
                      code::PrinterDots printer) {
    const Length side = sized.module * sized.symbol.side;
    const Length square = std::min(room.size.width, room.size.height);
    const Length top = room.top() + code_offset(stand, room.size.height - square);
    const Point corner{room.left() + (room.size.width - side) / 2, top + (square - side) / 2};
    return {{on_dots(corner.x, printer), on_dots(corner.y, printer)},
            sized.module,
            sized.symbol.side,
            sized.symbol.dark};
}

/// Lines to write on, as many as there is room for; none where a hand would not fit.
std::vector<Rule> writing_lines(Rect room) {
    constexpr Length apart = Length::millimetres(9);
    constexpr Length thickness = Length::points(0.5);
    std::vector<Rule> lines;
    for (Length y = room.top() + apart; y + thickness <= room.bottom(); y += apart) {
        lines.push_back({{{room.left(), y}, {room.size.width, thickness}}});
    }
    return lines;
}

Rect moved(Rect rect, Point by) {
    rect.origin = rect.origin + by;
    return rect;
}

void draw_print(Frame& frame, const Fitted& fitted, Point corner, const Layout& layout,
                const Target& target, const typeset::FontSet& fonts) {
    const auto arrangement = arrangement_of(fitted, layout, target.stock, fonts);
    for (const auto& rule : arrangement.rules) {
        frame.items.emplace_back(Rule{moved(rule, corner)});
    }
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto& placed = arrangement.areas[i];
        if (!placed.shown) {
            continue;
        }
        if (layout.areas[i].kind == AreaKind::Write) {
            for (const auto& line : writing_lines(moved(placed.room, corner))) {
                frame.items.emplace_back(line);
            }
            continue;
        }
        if (layout.areas[i].kind == AreaKind::Code && fitted.symbol) {
            frame.items.emplace_back(place_code(*fitted.symbol, layout.areas[i].stand,
                                                moved(placed.room, corner), target.printer));
            continue;
        }
        for (auto& item :
             set(fitted.contents[i], layout.areas[i], placed.type, moved(placed.text, corner))) {
            frame.items.push_back(std::move(item));
        }
    }
}

/// What was measured: the widest of each dish, and the prints that take their sizes from it.
struct Measured {
    std::vector<Fitted> widest;
    std::vector<Fitted> prints;
};

/// Dishes of one job differ in few words.
void share_words(std::vector<Fitted>& prints) {
    if (prints.size() < 2 || prints.back().kind != prints.end()[-2].kind) {
        return;
    }
    const auto& before = prints.end()[-2].contents;
    for (std::size_t i = 0; i < before.size(); ++i) {
        prints.back().contents[i].share_with(before[i]);
    }
}

void add(Measured& measured, AlikeFit fit) {
    const auto cards = fit.widest.size();
    const auto first = measured.widest.size();
    for (auto& widest : fit.widest) {
        measured.widest.push_back(std::move(widest));
        share_words(measured.widest);
    }
    for (std::size_t i = 0; i < fit.prints.size(); ++i) {
        auto& print = fit.prints[i];
        print.measured_as = first + i % cards;
        const auto& widest = measured.widest[print.measured_as].contents;
        for (std::size_t a = 0; a < widest.size(); ++a) {
            print.contents[a].share_with(widest[a]);
        }
        measured.prints.push_back(std::move(print));
    }
}

/// Prints of one kind agree on their sizes; a card does not bow to a label.
void agree_by_kind(Measured& measured) {
    std::map<wording::Kind, std::vector<Solution*>> by_kind;
    for (auto& print : measured.widest) {
        by_kind[print.kind].push_back(&print.solution);
    }
    for (auto& [kind, solutions] : by_kind) {
        agree(solutions);
    }
    for (auto& print : measured.prints) {
        print.solution = measured.widest[print.measured_as].solution;
    }
}

/// The codes of some of a job's prints. A code costs as much as all else about a label, and none
/// depends on another.
std::vector<Fault> choose_codes(const Source& source,
                                const std::vector<std::optional<Length>>& sides,
                                const Target& target, const std::vector<Fitted*>& prints) {
    std::vector<std::optional<Why>> refusals(prints.size());
    in_parallel(prints.size(), [&](std::size_t i) {
        if (const auto& side = sides[prints[i]->measured_as]) {
            refusals[i] = choose_code(source, *prints[i], *side, target);
        }
    });
    std::vector<Fault> faults;
    for (std::size_t i = 0; i < refusals.size(); ++i) {
        if (refusals[i]) {
            faults.push_back({prints[i]->print, std::move(*refusals[i])});
        }
    }
    return faults;
}

/// The first print of each dish goes first: where its code has no room, no other's has.
std::vector<Fault> choose_codes(const Source& source, const Layouts& layouts, const Target& target,
                                const typeset::FontSet& fonts, Measured& measured) {
    std::vector<std::optional<Length>> sides;
    for (const auto& print : measured.widest) {
        sides.push_back(code_side(print, layouts.at(print.kind), target, fonts));
    }
    std::vector<Fitted*> first;
    std::vector<Fitted*> others;
    std::vector<bool> seen(measured.widest.size(), false);
    for (auto& print : measured.prints) {
        (seen[print.measured_as] ? others : first).push_back(&print);
        seen[print.measured_as] = true;
    }
    auto faults = choose_codes(source, sides, target, first);
    return faults.empty() ? choose_codes(source, sides, target, others) : faults;
}

} // namespace

Result<Fitting, std::vector<Fault>> fit(const Source& source, const Layouts& layouts,
                                        const Target& target, const typeset::FontSet& fonts) {
    Shaper shaper{fonts};
    return fit(source, layouts, target, shaper);
}

Result<Fitting, std::vector<Fault>> fit(const Source& source, const Layouts& layouts,
                                        const Target& target, Shaper& shaper) {
    Measured measured;
    std::vector<Fault> faults;
    const Size room = room_of(target.stock);
    std::size_t count = 0;
    for (std::size_t i = 0; i < source.count; i += count) {
        count = source.alike ? source.alike(i) : 1;
        const auto wanted = target.which == Which::FirstOfDish ? 1 : count;
        auto dish = fit_alike(source, i, count, wanted, layouts, room, shaper);
        if (dish) {
            add(measured, std::move(dish).value());
        } else {
            faults.push_back({i, dish.fault()});
        }
    }
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    agree_by_kind(measured);
    faults = choose_codes(source, layouts, target, shaper.fonts(), measured);
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    Fitting fitting;
    fitting.measured = measured.widest.size();
    fitting.prints = std::move(measured.prints);
    place_prints(fitting, target);
    return fitting;
}

void place_prints(Fitting& fitting, const Target& target) {
    fitting.places =
        impose(target.stock, static_cast<int>(fitting.prints.size()), target.imposition);
    fitting.sheets = fitting.places.empty() ? 0 : fitting.places.back().sheet + 1;
}

Frame draw_sheet(const Fitting& fitting, int sheet, const Layouts& layouts, const Target& target,
                 const typeset::FontSet& fonts) {
    Frame frame;
    frame.sheet = target.stock.sheet;
    frame.correction = target.correction;
    for (const auto& mark : crop_marks(target.stock, target.unprinted)) {
        frame.items.emplace_back(mark);
    }
    if (!target.margin_note.empty()) {
        write_margin_note(frame, target.margin_note, target.stock, target.unprinted, fonts);
    }
    // Not equal_range: clang 14 cannot compile GCC 12's subrange.
    const auto& places = fitting.places;
    const auto first = std::ranges::lower_bound(places, sheet, {}, &Place::sheet);
    for (auto place = first; place != places.end() && place->sheet == sheet; ++place) {
        const auto& fitted = fitting.prints[static_cast<std::size_t>(place - places.begin())];
        const Point corner = target.stock.safe_at(place->cell).origin;
        draw_print(frame, fitted, corner, layouts.at(fitted.kind), target, fonts);
    }
    return frame;
}

std::vector<AreaReport> report(const Fitted& fitted, const Layout& layout,
                               const typeset::FontSet& fonts) {
    std::vector<AreaReport> reports;
    std::vector<const Area*> leavers;
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto& area = layout.areas[i];
        if (area.leave > 0 && (area.kind != AreaKind::Text || !fitted.contents[i].empty())) {
            leavers.push_back(&area);
        }
    }
    std::ranges::stable_sort(leavers, {}, [](const Area* area) { return area->leave; });
    leavers.resize(static_cast<std::size_t>(fitted.solution.choice.left_out));
    for (const auto& area : layout.areas) {
        const auto type = type_at(area, fitted.solution.choice.scale, fonts);
        reports.push_back({area.name, std::ranges::find(leavers, &area) != leavers.end(),
                           type.size * fonts.metrics(area.weight).x_height});
    }
    return reports;
}

} // namespace thawslip::layout

#include "layout/compose.h"

#include "base/list.h"
#include "base/parallel.h"
#include "layout/alike.h"
#include "layout/print_size.h"
#include "layout/sheets/crop_marks.h"
#include "layout/sheets/margin_note.h"

#include <algorithm>
#include <atomic>

namespace thawslip::layout {
namespace {

Arrangement arrangement_of(const FittedPrint& fitted, const Layout& layout, const Stock& stock,
                           const typeset::FontSet& fonts) {
    return arrange(layout, fitted.contents, room_of(fitted.kind, stock), fitted.sizing, fonts);
}

/// The square that is left for the code of one print, and what its area wants of it.
struct CodePlace {
    Length side;
    code::Durable durable;
};

/// Nothing where a print has no code.
std::optional<CodePlace> code_place(const FittedPrint& fitted, const Layout& layout,
                                    const Medium& medium, const typeset::FontSet& fonts) {
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto* code = std::get_if<CodeArea>(&layout.areas[i].kind);
        if (code != nullptr && fitted.contents[i].is_there()) {
            const auto arrangement = arrangement_of(fitted, layout, medium.stock, fonts);
            // One dot is kept back: placing the symbol on the dot grid may move it by half of one.
            return CodePlace{arrangement.areas[i].place.size.height - dot(medium.printer),
                             code->durable};
        }
    }
    return std::nullopt;
}

/// The code of one print, for the square that its area became.
std::optional<Why> choose_code(const Source& source, FittedPrint& fitted, const CodePlace& place,
                               const Medium& medium) {
    auto symbol = code::choose_symbol(source.code_texts(fitted.print), place.side, medium.printer,
                                      medium.least_module, place.durable);
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

Rect moved(Rect rect, Point by) {
    rect.origin = rect.origin + by;
    return rect;
}

void draw_print(Frame& frame, const FittedPrint& fitted, Point corner, const Layout& layout,
                const Medium& medium, const typeset::FontSet& fonts) {
    const auto arrangement = arrangement_of(fitted, layout, medium.stock, fonts);
    for (const auto& rule : arrangement.rules) {
        frame.items.emplace_back(Rule{moved(rule, corner)});
    }
    const Ink ink{fitted.symbol ? &*fitted.symbol : nullptr, medium.printer};
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto& placed = arrangement.areas[i];
        if (!placed.shown) {
            continue;
        }
        for (auto& item : draw(fitted.contents[i].in(placed.form), layout.areas[i], placed.type,
                               moved(placed.place, corner), ink)) {
            frame.items.push_back(std::move(item));
        }
    }
}

/// What was measured: the widest of each dish, and the prints that take their sizes from it.
struct Measured {
    std::vector<FittedPrint> widest;
    std::vector<FittedPrint> prints;
};

/// Dishes of one job differ in few words.
void share_words(std::vector<FittedPrint>& prints) {
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

/// A list is read by itself: its pages have agreed among themselves.
bool is_list(wording::Kind kind) {
    return kind == wording::Kind::DaySheet || kind == wording::Kind::DoorList;
}

/// Prints of one kind agree on their sizes; a card does not bow to a label, nor one that a list
/// runs on to to one that says all in one.
void agree_by_kind(Measured& measured, const Layouts& layouts, const Stock& stock,
                   const typeset::FontSet& fonts) {
    std::map<std::pair<wording::Kind, bool>, std::vector<SizedPrint>> by_kind;
    for (auto& print : measured.widest) {
        if (!is_list(print.kind)) {
            by_kind[{print.kind, print.runs_on}].push_back(
                {layouts.at(print.kind), print.contents, room_of(print.kind, stock), print.sizing});
        }
    }
    for (const auto& [kind, prints] : by_kind) {
        agree(prints, fonts);
    }
    for (auto& print : measured.prints) {
        print.sizing = measured.widest[print.measured_as].sizing;
    }
}

/// The codes of some of a job's prints. A code costs as much as all else about a label, and none
/// depends on another.
std::vector<Fault> choose_codes(const Source& source,
                                const std::vector<std::optional<CodePlace>>& places,
                                const Medium& medium, const std::vector<FittedPrint*>& prints) {
    std::vector<std::optional<Why>> refusals(prints.size());
    std::atomic<std::size_t> done = 0;
    in_parallel(prints.size(), [&](std::size_t i) {
        if (const auto& place = places[prints[i]->measured_as]) {
            refusals[i] = choose_code(source, *prints[i], *place, medium);
        }
        const auto so_far = ++done;
        if (source.progress) {
            source.progress(so_far, prints.size());
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
std::vector<Fault> choose_codes(const Source& source, const Layouts& layouts, const Medium& medium,
                                const typeset::FontSet& fonts, Measured& measured) {
    const auto places = mapped(measured.widest, [&](const FittedPrint& print) {
        return code_place(print, layouts.at(print.kind), medium, fonts);
    });
    std::vector<FittedPrint*> first;
    std::vector<FittedPrint*> others;
    std::vector<bool> seen(measured.widest.size(), false);
    for (auto& print : measured.prints) {
        (seen[print.measured_as] ? others : first).push_back(&print);
        seen[print.measured_as] = true;
    }
    auto faults = choose_codes(source, places, medium, first);
    return faults.empty() ? choose_codes(source, places, medium, others) : faults;
}

} // namespace

Result<Fitting, std::vector<Fault>> fit(const Source& source, const Layouts& layouts,
                                        const Medium& medium, const typeset::FontSet& fonts) {
    Shaper shaper{fonts};
    return fit(source, layouts, medium, shaper);
}

Result<Fitting, std::vector<Fault>> fit(const Source& source, const Layouts& layouts,
                                        const Medium& medium, Shaper& shaper) {
    Measured measured;
    std::vector<Fault> faults;
    std::size_t count = 0;
    for (std::size_t i = 0; i < source.count; i += count) {
        count = source.alike ? source.alike(i) : 1;
        const auto wanted = medium.which == Which::FirstOfDish ? 1 : count;
        auto dish = fit_alike(source, {i, count, wanted}, layouts, medium, shaper);
        if (dish) {
            add(measured, std::move(dish).value());
        } else {
            faults.push_back({i, dish.fault()});
        }
    }
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    agree_by_kind(measured, layouts, medium.stock, shaper.fonts());
    faults = choose_codes(source, layouts, medium, shaper.fonts(), measured);
    if (!faults.empty()) {
        return Failure{std::move(faults)};
    }
    Fitting fitting;
    fitting.measured = measured.widest.size();
    fitting.prints = std::move(measured.prints);
    place_prints(fitting, medium);
    return fitting;
}

void place_prints(Fitting& fitting, const Medium& medium) {
    const auto sizes = mapped(fitting.prints, [&medium](const FittedPrint& print) {
        return print_size(print.kind, medium.stock);
    });
    fitting.places = impose(medium.stock, sizes, medium.imposition);
    fitting.sheets = fitting.places.empty() ? 0 : fitting.places.back().sheet + 1;
}

Frame draw_sheet(const Fitting& fitting, int sheet, const Layouts& layouts, const Medium& medium,
                 const typeset::FontSet& fonts) {
    Frame frame;
    frame.sheet = medium.stock.sheet;
    frame.correction = medium.correction;
    for (const auto& mark : crop_marks(medium.stock, medium.unprinted)) {
        frame.items.emplace_back(mark);
    }
    if (!medium.margin_note.empty()) {
        write_margin_note(frame, medium.margin_note, medium.stock, medium.unprinted, fonts);
    }
    // Not equal_range: clang 14 cannot compile GCC 12's subrange.
    const auto& places = fitting.places;
    const auto first = std::ranges::lower_bound(places, sheet, {}, &Place::sheet);
    for (auto place = first; place != places.end() && place->sheet == sheet; ++place) {
        const auto& fitted = fitting.prints[static_cast<std::size_t>(place - places.begin())];
        const Point corner = medium.stock.safe_at(place->cell, place->part).origin;
        if (place->part == Part::FirstHalf) {
            for (const auto& mark : half_marks(medium.stock, place->cell)) {
                frame.items.emplace_back(mark);
            }
        }
        draw_print(frame, fitted, corner, layouts.at(fitted.kind), medium, fonts);
    }
    return frame;
}

Frame draw_alone(const FittedPrint& fitted, const Layout& layout, const Medium& medium,
                 const typeset::FontSet& fonts) {
    Frame frame;
    frame.sheet = cell_of(fitted.kind, medium.stock);
    const auto room = room_of(fitted.kind, medium.stock); // in the middle of its cell
    const Point corner{(frame.sheet.width - room.width) / 2,
                       (frame.sheet.height - room.height) / 2};
    draw_print(frame, fitted, corner, layout, medium, fonts);
    return frame;
}

std::vector<AreaReport> report(const FittedPrint& fitted, const Layout& layout) {
    const auto forms = forms_in_use(layout, fitted.contents, fitted.sizing);
    std::vector<AreaReport> reports;
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto& area = layout.areas[i];
        const auto* text = text_of(area);
        reports.push_back(
            {area.name, text != nullptr && fitted.contents[i].is_there() && !forms[i],
             text != nullptr && forms[i].value_or(0) > 0,
             text == nullptr ? Length{} : x_height_at(*text, scale_of(area, fitted.sizing))});
    }
    return reports;
}

} // namespace thawslip::layout

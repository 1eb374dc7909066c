#include "service/print/lay_out.h"

#include "base/list.h"
#include "layout/large_print.h"
#include "layout/sheets/margin_note.h"
#include "service/print/choices.h"
#include "service/print/fault_text.h"
#include "service/print/used_sheet.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"

#include <algorithm>
#include <fmt/format.h>
#include <set>

namespace thawslip::service {
namespace {

using Kinds = std::set<wording::Kind>;

Kinds kinds_in(const Job& job) {
    return mapped<Kinds>(job.prints, &PrintOf::kind);
}

layout::Layouts choose_for(const Kinds& kinds, const layout::Stock& stock,
                           const std::vector<layout::Layout>& layouts) {
    layout::Layouts chosen;
    for (const auto kind : kinds) {
        if (const auto* layout = layout_for(kind, stock, layouts)) {
            chosen.emplace(kind, *layout);
        }
    }
    return chosen;
}

bool has_all(const Kinds& kinds, const layout::Layouts& chosen) {
    return std::ranges::all_of(kinds, [&](wording::Kind kind) { return chosen.contains(kind); });
}

double area_of(const layout::Stock& stock) {
    return stock.cell.width.in_points() * stock.cell.height.in_points();
}

/// All shipped stocks, those of the smallest cells first; for large print the larger ones alone.
std::vector<layout::Stock> stocks_by_size(const Setup& setup, const Surroundings& around) {
    auto stocks = shipped_stocks(around);
    std::ranges::stable_sort(stocks, {}, area_of);
    if (setup.is_large_print) {
        std::erase_if(stocks, [least = area_of(setup.medium.stock)](const layout::Stock& stock) {
            return area_of(stock) <= least;
        });
    }
    return stocks;
}

/// Names of the first of `stocks` that would take a print that was refused, in the layout in use.
std::vector<std::string> stocks_that_fit(const layout::Source& source, std::size_t index,
                                         const wording::Print& print, const Setup& setup,
                                         const std::vector<layout::Stock>& stocks,
                                         layout::Shaper& shaper) {
    const layout::Source one{1, [&](std::size_t) { return print; },
                             [&](std::size_t) { return source.code_texts(index); }};
    std::vector<std::string> names;
    for (const auto& stock : stocks) {
        auto chosen = choose_for({print.kind}, stock, setup.layouts);
        if (setup.given && setup.given->kind == print.kind) {
            chosen.insert_or_assign(print.kind, *setup.given);
        }
        auto medium = setup.medium;
        medium.stock = stock;
        medium.imposition = {};
        if (names.size() < 3 && has_all({print.kind}, chosen) &&
            layout::fit(one, chosen, medium, shaper)) {
            names.push_back(stock.name);
        }
    }
    return names;
}

/// What is wrong with the prints that do not fit, each at its place in the day.
Messages explain(const std::vector<layout::Fault>& faults, const Job& job, const Days& days,
                 const layout::Source& source, const Setup& setup, const Surroundings& around) {
    Diagnostics diagnostics;
    const auto stocks = stocks_by_size(setup, around);
    layout::Shaper shaper{setup.fonts};
    for (const auto& fault : faults) {
        const auto print = source.print(fault.print);
        const bool of_any_stock = std::holds_alternative<layout::ContentFault>(fault.why) ||
                                  std::holds_alternative<layout::Unplaced>(fault.why);
        auto one = to_diagnostic(
            fault, print, setup.medium.stock,
            of_any_stock ? std::vector<std::string>{}
                         : stocks_that_fit(source, fault.print, print, setup, stocks, shaper),
            setup.is_large_print ? TypeSize::Large : TypeSize::Usual);
        const auto day = job.prints[fault.print].day;
        if (one.where.file.empty() && day < days.documents.size()) {
            one.where = days.documents[day].place(one.key);
        }
        // Bags of one dish fail alike: once is enough.
        if (std::ranges::find(diagnostics, one) == diagnostics.end()) {
            diagnostics.push_back(std::move(one));
        }
    }
    auto documents = days.documents;
    for (const auto& [file, text] : setup.own.all()) {
        documents.emplace_back(file, text);
    }
    Messages messages;
    messages.add(std::move(diagnostics), documents);
    return messages;
}

/// What was measured for the stock's paper. A roll printer that nobody measured prints from edge
/// to edge: the head is as wide as the roll (common practice, no source).
layout::Printer printer_of(const Settings& settings, const layout::Stock& stock) {
    auto printer = printer_for(settings.printers, stock.sheet);
    const bool measured = std::ranges::any_of(
        settings.printers, [&stock](const auto& known) { return known.paper == stock.sheet; });
    if (stock.roll && !measured) {
        printer.unprinted = {};
    }
    return printer;
}

/// The words of a trial, where a sheet has no margin for them: before the dish of each print, or
/// in its title.
void say_on_print(wording::Print& print, const std::string& words) {
    const auto named = [&print](const char* name) {
        return std::ranges::find(print.fields, name, &wording::Field::name);
    };
    if (const auto dish = named(wording::field_name::dish); dish != print.fields.end()) {
        auto& spans = dish->paragraphs.front().spans;
        spans.insert(spans.begin(), {words + " · ", wording::Emphasis::Strong});
    } else {
        auto& title = named(wording::field_name::title)->paragraphs;
        title.insert(title.begin(), wording::plain(words));
    }
}

/// A trial must not be taken for a label of food: its sheets say so, or else its prints.
void mark_as_trial(layout::Source& source, Setup& setup, const Settings& settings) {
    const auto words = style_of(settings).say("standing.trial");
    auto& medium = setup.medium;
    layout::Frame blank;
    if (write_margin_note(blank, words, medium.stock, medium.unprinted, setup.fonts)) {
        medium.margin_note = words;
        return;
    }
    source.print = [print = std::move(source.print), words](std::size_t i) {
        auto marked = print(i);
        say_on_print(marked, words);
        return marked;
    };
}

/// Chooses the stock and where prints stand on it. \returns whether there is one to print on
bool choose_medium(const Job& job, const Look& look, const Settings& settings,
                   const Surroundings& around, Setup& setup, Messages& messages) {
    const bool needs_room = setup.is_large_print || second_style_of(settings).has_value();
    const auto& usual = needs_room ? job.roomy_stock : job.default_stock;
    setup.stock = look.stock.empty() ? usual : look.stock;
    auto stock = choose_stock(setup.stock, around, setup.own);
    messages.add(stock.messages);
    if (!stock) {
        if (setup.stock == settings_of(job.what, settings).stock) {
            messages.note(fmt::format("the settings name this stock: {}", settings.file));
        }
        return false;
    }
    auto& medium = setup.medium;
    setup.stock_text = std::move(stock.value->text);
    medium.stock = std::move(*stock.value->stock);
    medium.which = job.which;
    medium.imposition = imposition_of(look, medium.stock, around, messages);
    medium.printer = {look.dots_per_inch.value_or(
        settings_of(job.what, settings).dots_per_inch.value_or(usual_dots_per_inch))};
    const auto printer = printer_of(settings, medium.stock);
    medium.correction = printer.correction;
    medium.unprinted = printer.unprinted;
    if (look.small_modules) {
        medium.least_module = Length::millimetres(0.33);
    }
    messages.add(check_printable(medium.stock, printer.unprinted, printer.correction), {});
    const auto wrong = check_imposition(medium.stock, medium.imposition);
    if (has_errors(wrong)) {
        messages.add(wrong, {});
    }
    return !has_errors(wrong);
}

/// Has the layout that was asked for take the place of the one that is usual for its prints.
/// \returns whether that can be
bool choose_own_layout(const Job& job, const Kinds& kinds, const Surroundings& around, Setup& setup,
                       Messages& messages) {
    auto layout = choose_layout(setup.layout, setup.layouts, around, setup.own);
    messages.add(layout.messages);
    if (!layout) {
        return false;
    }
    if (!kinds.contains(layout.value->kind)) {
        messages.error(fmt::format("{} is not drawn for a {}", setup.layout, job.noun),
                       {"what a layout is for stands under its key \"print\""});
        return false;
    }
    if (setup.is_large_print && is_file_name(setup.layout)) { // the shipped ones are already
        layout.value = layout::in_large_print(std::move(*layout.value));
    }
    setup.chosen.insert_or_assign(layout.value->kind, *layout.value);
    setup.given = std::move(layout.value);
    return true;
}

/// Chooses the layout of each kind of print. \returns whether each has one
bool choose_layouts(const Job& job, const Surroundings& around, Setup& setup, Messages& messages) {
    const auto kinds = kinds_in(job);
    setup.texts = around.layouts(kinds);
    setup.layouts = shipped_layouts(setup.texts);
    if (setup.is_large_print) {
        std::ranges::transform(setup.layouts, setup.layouts.begin(), layout::in_large_print);
    }
    setup.chosen = choose_for(kinds, setup.medium.stock, setup.layouts);
    if (!setup.layout.empty() && !choose_own_layout(job, kinds, around, setup, messages)) {
        return false;
    }
    if (!has_all(kinds, setup.chosen)) {
        messages.error(fmt::format("no layout is drawn for cells of {}", setup.medium.stock.name),
                       {"name one with --layout, or another stock"});
        return false;
    }
    return true;
}

using Fitted = Result<layout::Fitting, std::vector<layout::Fault>>;

/// The prints of dishes with a chosen bag, by their places in the job.
std::vector<std::size_t> prints_of_chosen_dishes(const Job& job, const Days& days) {
    std::vector<std::size_t> prints;
    for (std::size_t i = 0; i < job.prints.size(); ++i) {
        auto of = job.prints[i];
        of.kind = wording::Kind::CookDayCard; // which is of the dish
        if (is_chosen(of, job, days)) {
            prints.push_back(i);
        }
    }
    return prints;
}

/// Fits some prints of a job alone: those at `places`.
Fitted fit_some(const layout::Source& source, const std::vector<std::size_t>& places,
                const Setup& setup) {
    layout::Source some;
    some.count = places.size();
    some.print = [&](std::size_t i) { return source.print(places[i]); };
    some.code_texts = [&](std::size_t i) { return source.code_texts(places[i]); };
    some.alike = [&](std::size_t i) { return source.alike(places[i]); };
    some.own_fields = [&](std::size_t i) { return source.own_fields(places[i]); };
    auto fitted = layout::fit(some, setup.chosen, setup.medium, setup.fonts);
    if (!fitted) {
        auto faults = fitted.fault();
        for (auto& fault : faults) {
            fault.print = places[fault.print];
        }
        return Failure{std::move(faults)};
    }
    auto fitting = std::move(fitted).value();
    for (auto& print : fitting.prints) {
        print.print = places[print.print];
    }
    return fitting;
}

/// Fits all prints, so that a part is printed as it is among all; the chosen dishes alone where
/// another has no room on this stock.
Fitted fit_chosen(const layout::Source& source, const Job& job, const Days& days,
                  const Setup& setup) {
    auto fitted = layout::fit(source, setup.chosen, setup.medium, setup.fonts);
    return fitted || !job.chosen.bags ? std::move(fitted)
                                      : fit_some(source, prints_of_chosen_dishes(job, days), setup);
}

/// Tries finishing cards as large as the others where half a cell is too small for one of them.
/// \returns whether they fit so; then `fitting` and `setup` are of that
bool fits_whole_cells(Fitted& fitting, const layout::Source& source, const Job& job,
                      const Days& days, const Surroundings& around, Setup& setup) {
    const auto is_finishing_card = [&](const layout::Fault& fault) {
        return job.prints[fault.print].kind == wording::Kind::FinishingCard;
    };
    if (!setup.medium.stock.halves || !std::ranges::all_of(fitting.fault(), is_finishing_card)) {
        return false;
    }
    auto whole = setup;
    whole.medium.stock.halves = false;
    Messages none;
    if (!choose_layouts(job, around, whole, none)) {
        return false;
    }
    auto tried = fit_chosen(source, job, days, whole);
    if (!tried) {
        return false;
    }
    fitting = std::move(tried);
    setup = std::move(whole);
    return true;
}

/// Leaves what was chosen of what was fitted, each print as often as there are copies.
void keep_chosen(LaidOut& laid_out, const Job& job, const Days& days) {
    auto& prints = laid_out.fitting.prints;
    if (!job.chosen.bags && job.chosen.copies == 1) {
        return;
    }
    std::erase_if(prints, [&](const layout::FittedPrint& fitted) {
        return !is_chosen(job.prints[fitted.print], job, days);
    });
    std::vector<layout::FittedPrint> copied;
    for (auto first = prints.begin(); first != prints.end();) {
        const auto last = std::find_if(
            first, prints.end(), [&](const auto& fitted) { return fitted.print != first->print; });
        for (int copy = 0; copy < job.chosen.copies; ++copy) {
            copied.insert(copied.end(), first, last);
        }
        first = last;
    }
    prints = std::move(copied);
    place_prints(laid_out.fitting, laid_out.setup.medium);
}

/// What stands in an area of the shipped layouts, as a cook calls it; of others their name.
std::string in_words(const std::string& area) {
    static constexpr std::pair<std::string_view, std::string_view> words[] = {
        {"mark", "the dish's number"},
        {"months", "the strip of months"},
        {"ways", "other ways to thaw"},
        {"begin", "when to start thawing"},
        {"code", "the code"},
        {"id", "the bag's id"},
        {"bags", "the bags' ids"},
        {"write", "lines for notes"},
        {"numbers", "the dishes' names"},
        {"foot", "the line at the foot"}};
    const auto* found =
        std::ranges::find_if(words, [&](const auto& one) { return one.first == area; });
    return found == std::end(words) ? area : std::string{found->second};
}

/// What is said of a dish that the layout of its labels has no area for, as small ones have none.
std::vector<std::string> without_area(const PrintOf& of, const Days& days,
                                      const layout::Layout& layout) {
    std::vector<std::string> areas;
    if (of.kind == wording::Kind::BagLabel) {
        const auto& planned = package_of(of, days);
        const auto add = [&](bool is_said, std::string_view field, const char* area) {
            if (is_said && layout.area_with(field) == nullptr) {
                areas.emplace_back(area);
            }
        };
        add(!planned.other_thaws.empty(), wording::field_name::other_thaws, "ways");
        add(!planned.package.place.empty(), wording::field_name::place, "place");
    }
    return areas;
}

} // namespace

Outcome<LaidOut> lay_out(const Job& job, const Days& days, const Look& look,
                         const Settings& settings, const Surroundings& around) {
    Outcome<LaidOut> outcome;
    auto& messages = outcome.messages;
    LaidOut laid_out;
    auto& setup = laid_out.setup;
    setup.own = OwnFiles{look.kept};
    setup.layout = look.layout;
    setup.is_large_print = is_large_print(look, settings);
    if (!choose_medium(job, look, settings, around, setup, messages) ||
        !choose_layouts(job, around, setup, messages)) {
        return outcome;
    }
    setup.fonts = around.fonts();
    auto source = source_of(job, days, settings);
    source.progress = around.progress;
    if (look.is_trial) {
        mark_as_trial(source, setup, settings);
    }
    auto fitting = fit_chosen(source, job, days, setup);
    if (!fitting && fits_whole_cells(fitting, source, job, days, around, setup)) {
        messages.note("finishing cards are printed as large as the other cards, for not all of "
                      "them fit into half of one");
    }
    if (!fitting) {
        messages.add(explain(fitting.fault(), job, days, source, setup, around));
        return outcome;
    }
    laid_out.fitting = std::move(fitting).value();
    keep_chosen(laid_out, job, days);
    outcome.value = std::move(laid_out);
    return outcome;
}

layout::Frame draw_sheet(const LaidOut& laid_out, int sheet) {
    const auto& setup = laid_out.setup;
    return draw_sheet(laid_out.fitting, sheet, setup.chosen, setup.medium, setup.fonts);
}

Messages left_out(const LaidOut& laid_out, const Job& job, const Days& days) {
    Messages messages;
    std::set<std::string> said;
    for (const auto& fitted : laid_out.fitting.prints) {
        const auto& of = job.prints[fitted.print];
        const auto& layout = laid_out.setup.chosen.at(fitted.kind);
        auto names = without_area(of, days, layout);
        for (const auto& area : report(fitted, layout)) {
            if (area.left_out) {
                names.push_back(area.area);
            }
        }
        const auto areas = joined(names, ", ", in_words);
        const auto& dish = dish_name_of(of, job, days);
        if (!areas.empty() && said.insert(dish + areas).second) {
            messages.caution(fmt::format("left out for want of room: {} of \"{}\"", areas, dish));
        }
    }
    return messages;
}

} // namespace thawslip::service

#include "app/lay_out.h"

#include "app/choices.h"
#include "app/fault_text.h"
#include "app/make_prints.h"
#include "app/report.h"
#include "layout/sheets/margin_note.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

using Kinds = std::set<wording::Kind>;

Kinds kinds_in(const Job& job) {
    Kinds kinds;
    for (const auto& print : job.prints) {
        kinds.insert(print.kind);
    }
    return kinds;
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

/// All shipped stocks, those of the smallest cells first.
std::vector<layout::Stock> stocks_by_size(const DataFolder& data) {
    auto stocks = shipped_stocks(data);
    std::ranges::stable_sort(stocks, {}, [](const layout::Stock& stock) {
        return stock.cell.width.in_points() * stock.cell.height.in_points();
    });
    return stocks;
}

/// Names of the first of `stocks` that would take a print that was refused.
std::vector<std::string> stocks_that_fit(const layout::Source& source, std::size_t index,
                                         const wording::Print& print, const Setup& setup,
                                         const std::vector<layout::Stock>& stocks,
                                         layout::Shaper& shaper) {
    const layout::Source one{1, [&](std::size_t) { return print; },
                             [&](std::size_t) { return source.code_texts(index); }};
    std::vector<std::string> names;
    for (const auto& stock : stocks) {
        const auto chosen = choose_for({print.kind}, stock, setup.layouts);
        auto target = setup.target;
        target.stock = stock;
        target.imposition = {};
        if (names.size() < 3 && has_all({print.kind}, chosen) &&
            layout::fit(one, chosen, target, shaper)) {
            names.push_back(stock.name);
        }
    }
    return names;
}

void explain(const std::vector<layout::Fault>& faults, const Job& job, const Days& days,
             const layout::Source& source, const Setup& setup, Console console) {
    Diagnostics diagnostics;
    const auto stocks = stocks_by_size(setup.data);
    layout::Shaper shaper{setup.fonts};
    for (const auto& fault : faults) {
        const auto print = source.print(fault.print);
        const bool of_any_stock = std::holds_alternative<layout::ContentFault>(fault.why) ||
                                  std::holds_alternative<layout::Unplaced>(fault.why);
        Diagnostics one{to_diagnostic(
            fault, print, setup.target.stock,
            of_any_stock ? std::vector<std::string>{}
                         : stocks_that_fit(source, fault.print, print, setup, stocks, shaper))};
        if (const auto day = job.prints[fault.print].day; day < days.documents.size()) {
            place(one, days.documents[day]);
        }
        // Bags of one dish fail alike: once is enough.
        if (std::ranges::find(diagnostics, one.front()) == diagnostics.end()) {
            diagnostics.push_back(one.front());
        }
    }
    auto documents = days.documents;
    for (const auto& [file, text] : setup.own.all()) {
        documents.emplace_back(file, text);
    }
    print(console.err, std::move(diagnostics), documents);
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
    auto field = std::ranges::find(print.fields, wording::field_name::raw, &wording::Field::name);
    field =
        field != print.fields.end()
            ? field
            : std::ranges::find(print.fields, wording::field_name::title, &wording::Field::name);
    field->paragraphs.insert(field->paragraphs.begin(), wording::plain(words));
}

/// A trial must not be taken for a label of food: its sheets say so, or else its prints.
void mark_as_trial(layout::Source& source, Setup& setup, const Settings& settings) {
    const auto words = style_of(settings).say("standing.trial");
    auto& target = setup.target;
    layout::Frame blank;
    if (write_margin_note(blank, words, target.stock, target.unprinted, setup.fonts)) {
        target.margin_note = words;
        return;
    }
    source.print = [print = std::move(source.print), words](std::size_t i) {
        auto marked = print(i);
        say_on_print(marked, words);
        return marked;
    };
}

/// Chooses stock and layouts; says what stands against it and returns the status to leave with.
ExitStatus set_up(const Job& job, const PrintOptions& options, const Settings& settings,
                  Console console, Setup& setup) {
    setup.data = find_data_folder();
    setup.own = OwnFiles{options.kept};
    setup.stock = options.stock.empty() ? job.default_stock : options.stock;
    auto stock = choose_stock(setup.stock, setup.data, setup.own);
    if (!stock) {
        console.err << stock.fault();
        return ExitStatus::Refused;
    }
    setup.target.stock = std::move(stock).value();
    setup.target.which = job.which;
    setup.target.imposition = {options.first_cell, options.spoiled};
    setup.target.printer = {options.dots_per_inch.value_or(settings.dots_per_inch)};
    const auto printer = printer_of(settings, setup.target.stock);
    setup.target.correction = printer.correction;
    setup.target.unprinted = printer.unprinted;
    print(console.err, check_printable(setup.target.stock, printer.unprinted, printer.correction),
          {});
    if (options.small_modules) {
        setup.target.least_module = Length::millimetres(0.33);
    }
    const auto wrong = check_imposition(setup.target.stock, setup.target.imposition);
    if (has_errors(wrong)) {
        print(console.err, wrong, {});
        return ExitStatus::Refused;
    }
    const auto kinds = kinds_in(job);
    setup.layouts = shipped_layouts(setup.data, kinds);
    setup.chosen = choose_for(kinds, setup.target.stock, setup.layouts);
    if (!options.layout.empty()) {
        auto layout = choose_layout(options.layout, setup.layouts, setup.own);
        if (!layout) {
            console.err << layout.fault();
            return ExitStatus::Refused;
        }
        if (!kinds.contains(layout.value().kind)) {
            console.err << fmt::format("error: {} is not drawn for a {}\n"
                                       "    hint: what a layout is for stands under its key "
                                       "\"print\"\n",
                                       options.layout, job.noun);
            return ExitStatus::Refused;
        }
        setup.chosen.insert_or_assign(layout.value().kind, layout.value());
    }
    if (!has_all(kinds, setup.chosen)) {
        console.err << fmt::format("error: no layout is drawn for cells of {}\n"
                                   "    hint: name one with --layout, or another stock\n",
                                   setup.target.stock.name);
        return ExitStatus::Refused;
    }
    setup.fonts = load_fonts(setup.data);
    return ExitStatus::Done;
}

} // namespace

Result<LaidOut, ExitStatus> lay_out(const Job& job, const Days& days, const PrintOptions& options,
                                    const Settings& settings, Console console) {
    LaidOut laid_out;
    auto& setup = laid_out.setup;
    if (const auto status = set_up(job, options, settings, console, setup);
        status != ExitStatus::Done) {
        return Failure{status};
    }
    auto source = source_of(job, days, settings);
    if (options.record == Record::Trial) {
        mark_as_trial(source, setup, settings);
    }
    auto fitting = layout::fit(source, setup.chosen, setup.target, setup.fonts);
    if (!fitting) {
        explain(fitting.fault(), job, days, source, setup, console);
        return Failure{ExitStatus::Refused};
    }
    laid_out.fitting = std::move(fitting).value();
    return laid_out;
}

} // namespace thawslip::app

#include "app/job.h"

#include "app/choices.h"
#include "app/fault_text.h"
#include "app/report.h"
#include "app/whole_file.h"
#include "render/pdf.h"
#include "render/svg.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

/// Everything a job is laid out with.
struct Setup {
    typeset::FontSet fonts;
    std::vector<layout::Stock> stocks;
    std::vector<layout::Layout> layouts;
    layout::Target target;
    layout::Layouts chosen;
};

layout::Layouts choose_for(const std::vector<wording::Print>& prints, const layout::Stock& stock,
                           const std::vector<layout::Layout>& layouts) {
    layout::Layouts chosen;
    for (const auto& print : prints) {
        if (const auto* layout = layout_for(print.kind, stock, layouts)) {
            chosen.emplace(print.kind, *layout);
        }
    }
    return chosen;
}

bool has_all(const std::vector<wording::Print>& prints, const layout::Layouts& chosen) {
    return std::ranges::all_of(
        prints, [&](const wording::Print& print) { return chosen.contains(print.kind); });
}

/// Names of the smallest shipped stocks that would take a print that was refused.
std::vector<std::string> stocks_that_fit(const wording::Print& print, const Setup& setup) {
    auto stocks = setup.stocks;
    std::ranges::stable_sort(stocks, {}, [](const layout::Stock& stock) {
        return stock.cell.width.in_points() * stock.cell.height.in_points();
    });
    std::vector<std::string> names;
    for (const auto& stock : stocks) {
        const auto chosen = choose_for({print}, stock, setup.layouts);
        auto target = setup.target;
        target.stock = stock;
        target.imposition = {};
        if (names.size() < 3 && has_all({print}, chosen) &&
            layout::fit({print}, chosen, target, setup.fonts)) {
            names.push_back(stock.name);
        }
    }
    return names;
}

void explain(const std::vector<layout::Fault>& faults, const Job& job, const Days& days,
             const Setup& setup, Console console) {
    Diagnostics diagnostics;
    for (const auto& fault : faults) {
        const auto& print = job.prints[fault.print];
        const bool words = std::holds_alternative<layout::ContentFault>(fault.why);
        Diagnostics one{
            to_diagnostic(fault, print, setup.target.stock,
                          words ? std::vector<std::string>{} : stocks_that_fit(print, setup))};
        place(one, days.documents[job.days[fault.print]]);
        // Bags of one dish fail alike: once is enough.
        if (std::ranges::find(diagnostics, one.front()) == diagnostics.end()) {
            diagnostics.push_back(one.front());
        }
    }
    print(console.err, std::move(diagnostics), days.documents);
}

/// Chooses stock and layouts; says what stands against it and returns the status to leave with.
ExitStatus set_up(const Job& job, const PrintOptions& options, Console console, Setup& setup) {
    const auto data = find_data_folder();
    setup.stocks = shipped_stocks(data);
    auto stock =
        choose_stock(options.stock.empty() ? job.default_stock : options.stock, setup.stocks);
    if (!stock) {
        console.err << stock.fault();
        return ExitStatus::Refused;
    }
    setup.target.stock = std::move(stock).value();
    setup.target.imposition = {options.first_cell, options.spoiled};
    setup.target.printer = {options.dots_per_inch};
    if (options.small_modules) {
        setup.target.least_module = Length::millimetres(0.33);
    }
    const auto wrong = check_imposition(setup.target.stock, setup.target.imposition);
    if (has_errors(wrong)) {
        print(console.err, wrong, {});
        return ExitStatus::Refused;
    }
    setup.layouts = shipped_layouts(data);
    setup.chosen = choose_for(job.prints, setup.target.stock, setup.layouts);
    if (!options.layout.empty()) {
        auto layout = choose_layout(options.layout, setup.layouts);
        if (!layout) {
            console.err << layout.fault();
            return ExitStatus::Refused;
        }
        setup.chosen.insert_or_assign(layout.value().kind, layout.value());
    }
    if (!has_all(job.prints, setup.chosen)) {
        console.err << fmt::format("error: no layout is drawn for cells of {}\n"
                                   "    hint: name one with --layout, or another stock\n",
                                   setup.target.stock.name);
        return ExitStatus::Refused;
    }
    setup.fonts = load_fonts(data);
    return ExitStatus::Done;
}

void write_pdf(const std::string& output, const layout::Fitting& fitting, const Job& job,
               const Setup& setup) {
    WholeFile file{output};
    render::PdfWriter writer{setup.fonts,
                             {job.title, "en", std::nullopt},
                             [&file](std::string_view bytes) { file.write(bytes); }};
    for (int sheet = 0; sheet < fitting.sheets; ++sheet) {
        writer.add(draw_sheet(fitting, sheet, setup.chosen, setup.target, setup.fonts));
    }
    writer.finish();
    file.commit();
}

/// SVG has no pages: the second sheet goes to name-2.svg.
std::string numbered(const std::string& output, int sheet) {
    const fs::path path{output};
    return sheet == 0
               ? output
               : (path.parent_path() / fmt::format("{}-{}.svg", path.stem().string(), sheet + 1))
                     .string();
}

void write_svgs(const std::string& output, const layout::Fitting& fitting, const Job& job,
                const Setup& setup) {
    for (int sheet = 0; sheet < fitting.sheets; ++sheet) {
        const auto frame = draw_sheet(fitting, sheet, setup.chosen, setup.target, setup.fonts);
        write_whole_file(numbered(output, sheet), render::svg(frame, setup.fonts, job.title));
    }
}

std::string counted(std::size_t count, const std::string& noun) {
    return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

bool is_input(const std::string& output, const std::vector<std::string>& inputs) {
    return std::ranges::any_of(inputs, [&output](const std::string& input) {
        std::error_code error;
        return fs::equivalent(output, input, error) && !error;
    });
}

} // namespace

ExitStatus run_job(const Job& job, const Days& days, const PrintOptions& options, Console console) {
    const bool svg = options.output.ends_with(".svg");
    if (!svg && !options.output.ends_with(".pdf") && options.output != "-") {
        console.err << fmt::format("error: {} is neither .pdf nor .svg: the ending says what to "
                                   "write\n",
                                   options.output);
        return ExitStatus::Usage;
    }
    if (is_input(options.output, options.days)) {
        console.err << fmt::format("error: {} is the day's description itself; nothing written\n",
                                   options.output);
        return ExitStatus::Refused;
    }
    Setup setup;
    if (const auto status = set_up(job, options, console, setup); status != ExitStatus::Done) {
        return status;
    }
    const auto fitting = layout::fit(job.prints, setup.chosen, setup.target, setup.fonts);
    if (!fitting) {
        explain(fitting.fault(), job, days, setup, console);
        return ExitStatus::Refused;
    }
    if (svg) {
        write_svgs(options.output, fitting.value(), job, setup);
    } else {
        write_pdf(options.output, fitting.value(), job, setup);
    }
    if (options.output != "-") {
        console.out << fmt::format(
            "{}: {} on {} of {}; print at 100 %, not \"fit to page\"\n", options.output,
            counted(job.prints.size(), job.noun),
            counted(static_cast<std::size_t>(fitting.value().sheets), "sheet"),
            setup.target.stock.name);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

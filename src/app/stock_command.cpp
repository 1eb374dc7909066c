#include "app/choices.h"
#include "app/commands.h"
#include "app/deliver.h"
#include "app/output_guard.h"
#include "app/whole_file.h"
#include "base/nearest.h"
#include "layout/sheets/measurements.h"
#include "layout/sheets/paper.h"
#include "layout/sheets/ruler.h"
#include "layout/sheets/stock_drawing.h"
#include "render/pdf.h"
#include "render/svg.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// Writes one page as the ending of `output` says.
void write_page(const layout::Frame& page, const std::string& title, const std::string& output,
                const typeset::FontSet& fonts) {
    write_whole_file(output, output.ends_with(".svg")
                                 ? render::svg(page, fonts, title)
                                 : render::pdf({page}, fonts, {title, "en", std::nullopt}));
}

} // namespace

ExitStatus stock_list(Console console) {
    const auto stocks = shipped_stocks(find_data_folder());
    std::size_t widest = 0;
    for (const auto& stock : stocks) {
        widest = std::max(widest, stock.name.size());
    }
    for (const auto& stock : stocks) {
        console.out << fmt::format("{:<{}}  {}\n", stock.name, widest, stock.about);
    }
    return ExitStatus::Done;
}

ExitStatus stock_show(const std::string& name_or_file, const std::string& output,
                      const Settings& settings, Console console) {
    if (const auto refused =
            refuse_output({output, drawing_endings, {name_or_file}}, settings, console)) {
        return *refused;
    }
    const auto data = find_data_folder();
    OwnFiles own;
    const auto stock = choose_stock(name_or_file, data, own);
    if (!stock) {
        console.err << stock.fault();
        return ExitStatus::Refused;
    }
    if (output != "-") {
        for (const auto& line : in_words(stock.value())) {
            console.out << line << "\n";
        }
    }
    if (output.empty()) {
        return ExitStatus::Done;
    }
    const auto fonts = load_fonts(data);
    const auto& sheet = stock.value().sheet;
    const Size page{std::max(sheet.width, layout::smallest_drawing_page.width),
                    std::max(sheet.height, layout::smallest_drawing_page.height)};
    const auto drawing = stock_drawing(stock.value(), page, fonts);
    if (!drawing) {
        console.err << "error: " << drawing.fault() << "\n";
        return ExitStatus::Refused;
    }
    write_page(drawing.value(), stock.value().name, output, fonts);
    return ExitStatus::Done;
}

ExitStatus stock_ruler(const std::string& paper, const PrintOptions& options,
                       const Settings& settings, Console console) {
    if (const auto refused = refuse_output({options.output, drawing_endings}, settings, console)) {
        return *refused;
    }
    const auto size = layout::paper_size(paper);
    if (!size) {
        std::vector<std::string> names;
        for (const auto& known : layout::papers()) {
            names.emplace_back(known.name);
        }
        const auto near = nearest(paper, names);
        console.err << fmt::format("error: \"{}\" is not a paper\n    hint: {}\n", paper,
                                   near ? fmt::format("did you mean \"{}\"?", *near)
                                        : "expected " + list_of(names));
        return ExitStatus::Refused;
    }
    const auto printer = wanted_printer(options.printer, console);
    if (!printer) {
        return printer.fault();
    }
    const auto fonts = load_fonts(find_data_folder());
    const auto page = layout::ruler_page(*size, fonts);
    if (!page) {
        console.err << "error: " << page.fault() << "\n";
        return ExitStatus::Refused;
    }
    const auto write = [&](const std::string& file) {
        write_page(page.value(), "Ruler", file, fonts);
    };
    const auto status = deliver(write, options.output, printer.value(), {"Ruler", *size}, console);
    if (status == ExitStatus::Done && options.output != "-") {
        for (const auto& line : layout::ruler_instructions(*size)) {
            console.out << line << "\n";
        }
    }
    return status;
}

} // namespace thawslip::app

#include "app/commands.h"
#include "app/commands/deliver.h"
#include "app/files/data_folder.h"
#include "app/files/output_guard.h"
#include "app/files/whole_file.h"
#include "layout/sheets/dimensions.h"
#include "layout/sheets/ruler.h"
#include "render/pdf.h"
#include "render/svg.h"
#include "service/print/choices.h"
#include "service/print/stocks.h"

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
    const auto stocks = shipped_stocks(surroundings());
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
    const auto around = surroundings();
    service::OwnFiles own;
    const auto reading = choose_stock(name_or_file, around, own);
    console.err << to_text(reading.messages);
    if (!reading) {
        return ExitStatus::Refused;
    }
    const auto& stock = *reading.value->stock;
    if (output != "-") {
        for (const auto& line : in_words(stock)) {
            console.out << line << "\n";
        }
    }
    if (output.empty()) {
        return ExitStatus::Done;
    }
    const auto fonts = around.fonts();
    const auto drawing = service::drawing_of(stock, fonts);
    console.err << to_text(drawing.messages);
    if (!drawing) {
        return ExitStatus::Refused;
    }
    write_page(*drawing.value, stock.name, output, fonts);
    return ExitStatus::Done;
}

ExitStatus stock_ruler(const std::string& paper, const PrintOptions& options,
                       const Settings& settings, Console console) {
    if (const auto refused = refuse_output({options.output, drawing_endings}, settings, console)) {
        return *refused;
    }
    const auto around = surroundings();
    const auto made = ruler(paper, around);
    console.err << to_text(made.messages);
    if (!made) {
        return ExitStatus::Refused;
    }
    const auto printer = wanted_printer(options.printer, console);
    if (!printer) {
        return printer.fault();
    }
    const auto write = [&](const std::string& file) {
        write_page(made.value->page, "Ruler", file, around.fonts());
    };
    const auto status =
        deliver(write, options.output, printer.value(), {"Ruler", made.value->paper}, console);
    if (status == ExitStatus::Done && options.output != "-") {
        for (const auto& line : layout::ruler_instructions(made.value->paper)) {
            console.out << line << "\n";
        }
    }
    return status;
}

} // namespace thawslip::app

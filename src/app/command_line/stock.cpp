#include "app/command_line/parts.h"

#include <CLI/CLI.hpp>
#include <memory>

namespace thawslip::app {
namespace {

void add_stock_show(CLI::App& stock, Command& chosen) {
    auto* command = stock.add_subcommand("show", "one stock in words, and drawn to scale");
    auto name = std::make_shared<std::string>();
    auto output = std::make_shared<std::string>();
    command->add_option("stock", *name, "a name of `thawslip stock list`, or a file")
        ->required()
        ->option_text("NAME|FILE");
    command->add_option("-o,--output", *output, "where to draw it: .pdf or .svg")
        ->option_text("FILE");
    command->callback([name, output, &chosen] {
        chosen = [name, output](const Settings& settings, Console console) {
            return stock_show(*name, *output, settings, console);
        };
    });
}

void add_stock_ruler(CLI::App& stock, Command& chosen) {
    auto* command =
        stock.add_subcommand("ruler", "a page with rulers and crosses, to measure a printer by");
    auto paper = std::make_shared<std::string>();
    auto options = std::make_shared<PrintOptions>();
    command->add_option("--paper", *paper, "the paper in the tray: letter, a4, \"a4 landscape\"…")
        ->option_text("NAME");
    add_destination(*command, options->output, options->printer, ".pdf or .svg");
    command->callback([paper, options, &chosen] {
        require_destination(options->output, options->printer);
        chosen = [paper, options](const Settings& settings, Console console) {
            return stock_ruler(paper->empty() ? settings.paper : *paper, *options, settings,
                               console);
        };
    });
}

} // namespace

void add_stock(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("stock", "label sheets, card sheets and rolls");
    command->require_subcommand(1);
    command->add_subcommand("list", "all that come with thawslip")->callback([&chosen] {
        chosen = [](const Settings&, Console console) { return stock_list(console); };
    });
    add_stock_show(*command, chosen);
    add_stock_ruler(*command, chosen);
}

} // namespace thawslip::app

#include "app/command_line.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <functional>
#include <ostream>

namespace thawslip::app {
namespace {

/// What the parsed command line asks for; run after parsing, so that a fault in a later option is
/// found before anything happens.
using Command = std::function<ExitStatus(Console)>;

/// What is laid out, and on what.
void add_layout_options(CLI::App& command, PrintOptions& options) {
    command.add_option("days", options.days, "descriptions of assembly days (TOML)")
        ->required()
        ->option_text("DAY.toml...");
    command
        .add_option("--stock", options.stock,
                    "the sheet or roll to print on: a name of `thawslip stock list`, or a file")
        ->option_text("NAME|FILE");
    command
        .add_option("--layout", options.layout,
                    "a layout other than the one for the cell's shape: a name, or a file")
        ->option_text("NAME|FILE");
    command
        .add_option("--dpi", options.dots_per_inch,
                    "dots per inch of the printer (203.2, 300, 600)")
        ->check(CLI::Range(72.0, 4800.0))
        ->option_text("N");
    command.add_flag("--small-modules", options.small_modules,
                     "allow code modules of 0.33 mm instead of 0.4 mm");
}

/// The same, and where the print goes.
void add_print_options(CLI::App& command, PrintOptions& options) {
    add_layout_options(command, options);
    command
        .add_option("-o,--output", options.output,
                    "what to write: .pdf or .svg; - for standard output")
        ->required()
        ->option_text("FILE");
    command
        .add_option("--first-cell", options.first_cell,
                    "start at this cell of a half-used sheet, counted along rows from 1")
        ->option_text("N");
    command
        .add_option("--spoiled", options.spoiled, "cells of the first sheet that cannot be used")
        ->option_text("N...");
}

void add_new(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("new", "write a commented day to start from");
    auto file = std::make_shared<std::string>();
    command->add_option("file", *file, "the file to write")->required()->option_text("DAY.toml");
    command->callback(
        [file, &chosen] { chosen = [file](Console console) { return new_day(*file, console); }; });
}

void add_labels(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("labels", "print a label for every bag");
    auto options = std::make_shared<PrintOptions>();
    add_print_options(*command, *options);
    command->callback([options, &chosen] {
        chosen = [options](Console console) { return labels(*options, console); };
    });
}

void add_cards(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("cards", "print finishing cards and cook-day cards");
    auto options = std::make_shared<PrintOptions>();
    auto finishing = std::make_shared<bool>(false);
    auto cook_day = std::make_shared<bool>(false);
    add_print_options(*command, *options);
    auto* only_finishing = command->add_flag("--finishing", *finishing, "finishing cards only");
    command->add_flag("--cook-day", *cook_day, "cook-day cards only")->excludes(only_finishing);
    command->callback([=, &chosen] {
        const auto kinds = *finishing  ? CardKinds::Finishing
                           : *cook_day ? CardKinds::CookDay
                                       : CardKinds::Both;
        chosen = [options, kinds](Console console) { return cards(*options, kinds, console); };
    });
}

void add_reading(CLI::App& app, const char* name, const char* about, Command& chosen,
                 ExitStatus (*run)(const PrintOptions&, Console)) {
    auto* command = app.add_subcommand(name, about);
    auto options = std::make_shared<PrintOptions>();
    add_layout_options(*command, *options);
    command->callback([options, run, &chosen] {
        chosen = [options, run](Console console) { return run(*options, console); };
    });
}

void add_stock(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand("stock", "label sheets, card sheets and rolls");
    command->require_subcommand(1);
    command->add_subcommand("list", "all that come with thawslip")->callback([&chosen] {
        chosen = [](Console console) { return stock_list(console); };
    });
}

} // namespace

ExitStatus run(int argc, const char* const* argv, Console console) {
    CLI::App app{"Labels, finishing cards and cook-day cards for food frozen in bulk.", "thawslip"};
    app.set_version_flag("--version", "thawslip " THAWSLIP_VERSION);
    app.require_subcommand(1);
    app.footer("Food safety: the rules of your local food authority come first.\n"
               "Exit status: 0 done, 1 refused, 2 wrong command line, 3 the system failed.");
    Command chosen;
    add_new(app, chosen);
    add_labels(app, chosen);
    add_cards(app, chosen);
    add_reading(app, "check", "say everything that would be refused or cautioned; write nothing",
                chosen, check);
    add_reading(app, "text", "show what each code carries, one bag after the other", chosen, text);
    add_stock(app, chosen);
    try {
        app.parse(argc, argv);
    } catch (const CLI::ParseError& error) {
        const bool asked = error.get_exit_code() == static_cast<int>(CLI::ExitCodes::Success);
        app.exit(error, console.out, console.err);
        return asked ? ExitStatus::Done : ExitStatus::Usage;
    }
    return chosen(console);
}

} // namespace thawslip::app

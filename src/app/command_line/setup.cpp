#include "app/command_line/parts.h"
#include "app/commands/setup_command.h"
#include "app/commands/setup_questions.h"

#include <CLI/CLI.hpp>
#include <iostream>
#include <memory>

namespace thawslip::app {
namespace {

void add_answers(CLI::App& command, SetupOptions& options) {
    const auto add = [&command](const char* name, auto& value, const char* about,
                                const char* text) {
        return command.add_option(name, value, about)->option_text(text);
    };
    add("--label-printer", options.label_printer, "the printer for labels", "NAME");
    add("--label-stock", options.label_stock, "the stock for labels", "NAME|FILE");
    add("--label-dpi", options.label_dots, "dots per inch of that printer", "N")->check(dots_fault);
    add("--card-printer", options.card_printer, "the printer for cards", "NAME");
    add("--cook-day-stock", options.cook_day_stock, "the stock for cook-day cards", "NAME|FILE");
    add("--finishing-stock", options.finishing_stock, "the stock for finishing cards", "NAME|FILE");
    add("--list-printer", options.list_printer, "the printer for lists and plans", "NAME");
    add("--ruler", options.ruler, "also write a page with rulers, to measure the printer by",
        "FILE");
}

} // namespace

void add_setup(CLI::App& app, Command& chosen, bool& needs_settings,
               const std::function<void(SetupOptions&)>& take_overrides) {
    auto* command = app.add_subcommand(
        "setup", "ask once for paper, language, printers and stocks, and keep them as settings");
    auto options = std::make_shared<SetupOptions>();
    add_answers(*command, *options);
    command->add_flag("--yes", options->takes_proposals,
                      "ask nothing: take what is proposed where no option says otherwise");
    command->add_flag_callback(
        "--overwrite", [options] { options->overwrite = Overwrite::Yes; },
        "change settings that are there without asking; a copy of them stays");
    command->callback([=, &needs_settings, &chosen] {
        needs_settings = false; // a file that cannot be read is put aside
        take_overrides(*options);
        chosen = [options](const Settings& settings, Console console) {
            return setup(*options, settings, std::cin, console);
        };
    });
}

} // namespace thawslip::app

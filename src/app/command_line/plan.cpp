#include "app/command_line/parts.h"

#include <CLI/CLI.hpp>
#include <memory>

namespace thawslip::app {
namespace {

/// Where the plan is drawn to scale, and on what.
void add_sheet(CLI::App& command, PrintOptions& sheet) {
    add_destination(command, sheet.output, sheet.printer);
    add_overwrite(command, sheet.overwrite);
    add_stock_choice(command, sheet.look);
}

/// Standard output has the plan already.
std::string is_a_file(const std::string& calendar) {
    return calendar == "-" ? "the plan goes to standard output: name a file" : "";
}

} // namespace

void add_plan(CLI::App& app, Command& chosen) {
    auto* command =
        app.add_subcommand("plan", "when to thaw, start and add, to eat at a given time");
    auto options = std::make_shared<PlanOptions>();
    command
        ->add_option("DAY.toml", options->days,
                     "descriptions of packing days (TOML); or bags of the archive: ids, or words "
                     "of a dish; or photographs of codes")
        ->required()
        ->option_text("DAY.toml|BAG|WORDS|PHOTO...");
    command->add_option("--eat", options->eat, "local date and time to eat, \"2026-12-03 18:30\"")
        ->required()
        ->option_text("TIME");
    command
        ->add_option("--dish", options->dish,
                     "only dishes whose name has these words; a comma between several dishes")
        ->option_text("WORDS");
    command
        ->add_option("--bags", options->bags,
                     "how many bags of each dish, and of each of its sizes (1)")
        ->check(CLI::Range(1, 999))
        ->option_text("N");
    command->add_option("--now", options->now, "plan as if it were this time")->option_text("TIME");
    command->add_option("--calendar", options->calendar, "also write the plan as a calendar")
        ->check(is_a_file)
        ->option_text("FILE.ics");
    add_sheet(*command, options->sheet);
    auto answer = add_json(*command, "answer in JSON");
    command->callback([options, answer, &chosen] {
        options->answer = *answer;
        if (options->answer == AnswerAs::Json && options->sheet.output == "-") {
            throw CLI::ExcludesError{"--json", "-o -"};
        }
        chosen = [options](const Settings& settings, Console console) {
            return plan(*options, settings, console);
        };
    });
}

} // namespace thawslip::app

#include "app/command_line/parts.h"

#include <CLI/CLI.hpp>
#include <memory>

namespace thawslip::app {

void add_lists(CLI::App& app, Command& chosen) {
    auto* command =
        app.add_subcommand("lists", "print the day sheet, the shopping list and the door list");
    auto options = std::make_shared<PrintOptions>();
    auto door = std::make_shared<bool>(false);
    auto day = std::make_shared<bool>(false);
    auto by_station = std::make_shared<bool>(false);
    auto shopping = std::make_shared<bool>(false);
    add_print_options(*command, *options);
    add_trial(*command, *options);
    add_same_batch(*command, options->which);
    auto* days = command->get_option("DAY.toml")->required(false);
    auto* only_door = command->add_flag(
        "--door", *door, "the freezer door list only; without a day, of all that is frozen");
    auto* only_day = command->add_flag("--day", *day, "the day sheet and the shopping list only")
                         ->excludes(only_door);
    command
        ->add_flag("--by-station", *by_station, "the same, with pages of its own for each station")
        ->excludes(only_door);
    command->add_flag("--shopping", *shopping, "the shopping list only, of all days together")
        ->excludes(only_door)
        ->excludes(only_day);
    command->callback([=, &chosen] {
        if (days->count() == 0 && !*door) {
            throw CLI::RequiredError{"DAY.toml, or --door for all that the archive has frozen,"};
        }
        require_destination(options->output, options->printer);
        const auto what = *door         ? What::DoorList
                          : *shopping   ? What::Shopping
                          : *by_station ? What::StationSheets
                          : *day        ? What::DaySheets
                                        : What::Lists;
        chosen = [options, what](const Settings& settings, Console console) {
            return options->days.empty() ? print_frozen(*options, settings, console)
                                         : print_days(what, *options, settings, console);
        };
    });
}

} // namespace thawslip::app

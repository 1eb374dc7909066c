#include "app/command_line/parts.h"
#include "app/desk/desk_options.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>

namespace thawslip::app {
namespace {

/// What is wrong with the text of --idle; empty where nothing is.
std::string are_minutes(const std::string& text) {
    double minutes = 0.0;
    const bool read = CLI::detail::lexical_cast(text, minutes);
    return read && minutes >= 0.01 && minutes <= 43'200.0
               ? ""
               : fmt::format("\"{}\" is no number of minutes from 0.01 to 43200", text);
}

} // namespace

void add_desk(CLI::App& app, Command& chosen, bool& needs_settings,
              const std::function<void(DeskOptions& options)>& take_overrides) {
    auto* command =
        app.add_subcommand("desk", "open the page in the browser that does all of this without "
                                   "typing commands");
    auto options = std::make_shared<DeskOptions>();
    auto minutes = std::make_shared<double>(usual_idle_time.count());
    constexpr int highest_port = 65'535;
    command
        ->add_option("place", options->place,
                     "the folder with the days, or a day in it; \"Thawslip\" among the documents "
                     "where none is named")
        ->option_text("FOLDER|DAY.toml");
    command->add_option("--port", options->port, "the port to listen on; any that is free")
        ->check(CLI::Range(0, highest_port))
        ->option_text("N");
    command->add_flag_callback(
        "--no-open", [options] { options->opens_browser = false; },
        "print the link and open no browser");
    auto* house =
        command
            ->add_option(
                "--kitchen", options->house,
                "also let phones of the house in, at this computer's address in its network; "
                "port 61722 where none is named")
            ->option_text("ADDRESS[:PORT]");
    command
        ->add_flag("--tls", options->encrypts,
                   "encrypt what goes to phones, by a certificate of our own, so that they may "
                   "use their cameras")
        ->needs(house);
    command->add_option("--idle", *minutes, "end when nobody has used it for so many minutes (720)")
        ->check(are_minutes)
        ->option_text("N");
    command->callback([=, &chosen, &needs_settings] {
        needs_settings = false; // the page says what is wrong with them
        take_overrides(*options);
        options->idle = std::chrono::duration_cast<std::chrono::milliseconds>(
            std::chrono::duration<double, std::ratio<60>>{*minutes});
        chosen = [options](const Settings&, Console console) { return desk(*options, console); };
    });
}

} // namespace thawslip::app

#include "app/command_line/parts.h"
#include "base/list.h"

#include <CLI/CLI.hpp>
#include <memory>

namespace thawslip::app {

void add_foods(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand(
        "foods", "the kinds of food: how long each keeps, how hot it must get, and by which list");
    auto words = std::make_shared<std::vector<std::string>>();
    command
        ->add_option("word", *words,
                     "only those that an everyday word has to do with, in any language")
        ->option_text("WORD...");
    auto answer = add_json(*command, "answer in JSON, with every word that means them");
    command->callback([words, answer, &chosen] {
        chosen = [words, answer](const Settings& settings, Console console) {
            return foods(joined(*words, " "), *answer, settings, console);
        };
    });
}

} // namespace thawslip::app

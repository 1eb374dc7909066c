#include "app/command_line/parts.h"

#include <CLI/CLI.hpp>
#include <fmt/format.h>
#include <memory>

namespace thawslip::app {

void add_foods(CLI::App& app, Command& chosen) {
    auto* command = app.add_subcommand(
        "foods", "the kinds of food: how long each keeps, how hot it must get, and by which list");
    auto words = std::make_shared<std::vector<std::string>>();
    auto json = std::make_shared<bool>(false);
    command
        ->add_option("word", *words,
                     "only those that an everyday word has to do with, in any language")
        ->option_text("WORD...");
    command->add_flag("--json", *json, "answer in JSON, with every word that means them");
    command->callback([words, json, &chosen] {
        const auto text = fmt::format("{}", fmt::join(*words, " "));
        const auto answer = *json ? AnswerAs::Json : AnswerAs::Words;
        chosen = [text, answer](const Settings& settings, Console console) {
            return foods(text, answer, settings, console);
        };
    });
}

} // namespace thawslip::app

#pragma once

#include "app/command_line/command_description.h"

#include <string>
#include <vector>

namespace thawslip::app::completions {

/// What a shell may offer where a value stands.
enum class Offer { Nothing, Choices, Files, TomlFiles, Stocks, Printers };

/// Read off the value's name and description: "FILE", "DAY.toml...", "letter|a4"…
Offer offer_for(const ArgumentDescription& argument);

/// The words of "letter|a4". \pre offer_for(argument) is Choices
std::string choices_of(const ArgumentDescription& argument);

/// Every command of the program, itself first, each before what is below it.
std::vector<CommandDescription> all_commands(const CommandDescription& program);

/// `text` between `'`, for any of the three shells' files.
std::string in_quotes(const std::string& text);

/// The whole completion file of a shell for the program described.
std::string bash(const CommandDescription& program);
std::string zsh(const CommandDescription& program);
std::string fish(const CommandDescription& program);

} // namespace thawslip::app::completions

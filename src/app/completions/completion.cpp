#include "app/completions/completion.h"

#include "base/letters.h"

#include <algorithm>

namespace thawslip::app::completions {
namespace {

bool has(const std::string& text, const std::string& part) {
    return text.find(part) != std::string::npos;
}

bool is_choice(const std::string& value) {
    return has(value, "|") && std::ranges::none_of(value, is_upper);
}

} // namespace

Offer offer_for(const ArgumentDescription& argument) {
    const auto& value = argument.value;
    if (argument.long_name == "--stock" || has(argument.about, "thawslip stock list")) {
        return Offer::Stocks;
    }
    if (is_choice(value)) {
        return Offer::Choices;
    }
    if (has(value, "PRINTER")) {
        return Offer::Printers;
    }
    if (has(value, ".toml") || value == "NAME|FILE") {
        return Offer::TomlFiles;
    }
    return has(value, "FILE") || has(value, "PHOTO") ? Offer::Files : Offer::Nothing;
}

std::string choices_of(const ArgumentDescription& argument) {
    auto choices = argument.value;
    std::ranges::replace(choices, '|', ' ');
    return choices;
}

std::vector<CommandDescription> all_commands(const CommandDescription& program) {
    std::vector<CommandDescription> all{program};
    for (const auto& command : program.commands) {
        const auto below = all_commands(command);
        all.insert(all.end(), below.begin(), below.end());
    }
    return all;
}

std::string in_quotes(const std::string& text) {
    std::string safe = "'";
    for (const char c : text) {
        safe += c == '\'' ? std::string{"'\"'\"'"} : std::string{c};
    }
    return safe + "'";
}

} // namespace thawslip::app::completions

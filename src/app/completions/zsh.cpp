#include "app/completions/completion.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::app::completions {
namespace {

constexpr const char* zsh_head = R"sh(#compdef thawslip
# zsh completion for thawslip. Made from the program's own description of its commands.

_thawslip_stocks() {
    local -a stocks
    stocks=(${${(f)"$(thawslip stock list 2>/dev/null)"}%% *})
    _alternative "stocks:stock:($stocks)" 'files:file:_files -g "*.toml"'
}

_thawslip_printers() {
    local -a printers
    printers=(${(f)"$(lpstat -e 2>/dev/null)"})
    compadd -a printers
}
)sh";

/// Text inside a specification of _arguments, where these have a meaning.
std::string escaped(const std::string& text) {
    std::string safe;
    for (const char c : text) {
        if (c == '[' || c == ']' || c == ':' || c == '\\') {
            safe += '\\';
        }
        safe += c;
    }
    return safe;
}

std::string action(const ArgumentDescription& argument) {
    switch (offer_for(argument)) {
    case Offer::Nothing: return " ";
    case Offer::Choices: return "(" + choices_of(argument) + ")";
    case Offer::Files: return "_files";
    case Offer::TomlFiles: return "_files -g \"*.toml\"";
    case Offer::Stocks: return "_thawslip_stocks";
    case Offer::Printers: return "_thawslip_printers";
    }
    return " ";
}

std::string specification(const ArgumentDescription& option) {
    const bool may_be_left_out = option.value.starts_with('[');
    std::string rest = fmt::format("[{}]", escaped(option.about));
    if (!option.value.empty()) {
        rest += fmt::format("{}{}:{}", may_be_left_out ? "::" : ":", escaped(option.value),
                            action(option));
    }
    const auto ending = option.value.empty() ? "" : may_be_left_out ? "=-" : "=";
    if (option.short_name.empty()) {
        return "        " + in_quotes(option.long_name + ending + rest) + " \\\n";
    }
    const auto short_ending = option.value.empty() ? "" : "+";
    return fmt::format("        '({0} {1})'{{{0}{2},{1}{3}}}{4} \\\n", option.short_name,
                       option.long_name, short_ending, ending, in_quotes(rest));
}

std::string function_of(const std::string& path) {
    auto name = "_" + path;
    std::ranges::replace(name, ' ', '_');
    return name;
}

/// The commands below, each with its own function.
std::string commands_part(const CommandDescription& command) {
    std::string names;
    std::string cases;
    for (const auto& below : command.commands) {
        names += fmt::format("                {}\n",
                             in_quotes(escaped(below.name) + ":" + escaped(below.about)));
        cases += fmt::format("                {}) {} ;;\n", below.name, function_of(below.path));
    }
    return "        '1: :->command' '*:: :->rest'\n    case $state in\n        command)\n"
           "            local -a commands\n            commands=(\n" +
           names + "            )\n            _describe command commands ;;\n        rest)\n" +
           "            case $line[1] in\n" + cases + "            esac ;;\n    esac\n";
}

std::string words_part(const CommandDescription& command) {
    if (command.words.empty()) {
        return "        ''\n";
    }
    const auto& word = command.words.front();
    const bool several = word.value.ends_with("...");
    return "        " +
           in_quotes(
               fmt::format("{}:{}:{}", several ? "*" : "1", escaped(word.value), action(word))) +
           "\n";
}

/// The program's own options, which may follow any command; --help and --version, which take no
/// value, are not repeated.
std::string options_of_all(const CommandDescription& program) {
    std::string text;
    for (const auto& option : program.options) {
        text += option.value.empty() ? "" : specification(option);
    }
    return text;
}

} // namespace

std::string zsh(const CommandDescription& program) {
    std::string text = zsh_head;
    for (const auto& command : all_commands(program)) {
        text += fmt::format("\n{}() {{\n    local curcontext=$curcontext state line\n"
                            "    _arguments -C \\\n",
                            function_of(command.path));
        for (const auto& option : command.options) {
            text += specification(option);
        }
        text += command.path == program.path ? "" : options_of_all(program);
        text += command.commands.empty() ? words_part(command) : commands_part(command);
        text += "}\n";
    }
    return text + "\n_thawslip \"$@\"\n";
}

} // namespace thawslip::app::completions

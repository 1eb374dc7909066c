#include "app/completions/completion.h"
#include "base/list.h"

#include <fmt/format.h>

namespace thawslip::app::completions {
namespace {

constexpr const char* bash_head =
    R"sh(# bash completion for thawslip. Made from the program's own description of its commands.

_thawslip_offer()
{
    case $1 in
        files) compopt -o filenames; mapfile -t COMPREPLY < <(compgen -f -- "$cur") ;;
        toml)
            compopt -o filenames
            mapfile -t COMPREPLY < <(compgen -d -- "$cur"; compgen -f -X '!*.toml' -- "$cur")
            ;;
        stocks)
            compopt -o filenames
            mapfile -t COMPREPLY < <(
                compgen -W "$(thawslip stock list 2>/dev/null | cut -d ' ' -f 1)" -- "$cur"
                compgen -d -- "$cur"; compgen -f -X '!*.toml' -- "$cur")
            ;;
        printers)
            mapfile -t COMPREPLY < <(compgen -W "$(lpstat -e 2>/dev/null)" -- "$cur")
            ;;
        *) mapfile -t COMPREPLY < <(compgen -W "$1" -- "$cur") ;;
    esac
}

_thawslip()
{
    local cur=${COMP_WORDS[COMP_CWORD]} prev=${COMP_WORDS[COMP_CWORD - 1]} command=thawslip i
    COMPREPLY=()
    if [[ $cur == "=" ]]; then
        cur=
    elif [[ $prev == "=" ]]; then
        prev=${COMP_WORDS[COMP_CWORD - 2]}
    fi
    for ((i = 1; i < COMP_CWORD; i++)); do
        case "$command ${COMP_WORDS[i]}" in
)sh";

std::string words_offered(const ArgumentDescription& argument) {
    switch (offer_for(argument)) {
    case Offer::Nothing: return "''";
    case Offer::Choices: return in_quotes(choices_of(argument));
    case Offer::Files: return "files";
    case Offer::TomlFiles: return "toml";
    case Offer::Stocks: return "stocks";
    case Offer::Printers: return "printers";
    }
    return "''";
} // namespace thawslip::app::completions

/// What follows an option that takes a value; `any` stands before the options of the
/// program itself, which may follow any command.
std::string values(const CommandDescription& command, const std::string& before) {
    std::string cases;
    for (const auto& option : command.options) {
        if (!option.value.empty()) {
            std::string pattern = fmt::format("{}{}", before, option.long_name);
            if (!option.short_name.empty()) {
                pattern += fmt::format("|{}{}", before, option.short_name);
            }
            cases += fmt::format("        {}) _thawslip_offer {}; return ;;\n", pattern,
                                 words_offered(option));
        }
    }
    return cases;
}

std::string option_names(const CommandDescription& command) {
    return joined(command.options, " ", &ArgumentDescription::long_name);
}

} // namespace

std::string bash(const CommandDescription& program) {
    const auto commands = all_commands(program);
    std::string text = bash_head;
    std::string after_option;
    std::string options;
    std::string words;
    for (const auto& command : commands) {
        const bool is_program = command.path == program.path;
        const auto path = in_quotes(command.path);
        if (!is_program) {
            text += fmt::format("            {}) command={} ;;\n", path, path);
        }
        after_option += values(command, is_program ? "*\\ " : path + "\\ ");
        options +=
            fmt::format("            {}) _thawslip_offer '{}{}' ;;\n", path,
                        is_program ? "" : option_names(program) + " ", option_names(command));
        if (!command.commands.empty()) {
            words += fmt::format("        {}) _thawslip_offer '{}' ;;\n", path,
                                 joined(command.commands, " ", &CommandDescription::name));
        } else if (!command.words.empty()) {
            words += fmt::format("        {}) _thawslip_offer {} ;;\n", path,
                                 words_offered(command.words.front()));
        }
    }
    return text + "        esac\n    done\n    case \"$command $prev\" in\n" + after_option +
           "    esac\n    if [[ $cur == -* ]]; then\n        case $command in\n" + options +
           "        esac\n        return\n    fi\n    case $command in\n" + words +
           "    esac\n}\n\ncomplete -F _thawslip thawslip\n";
}

} // namespace thawslip::app::completions

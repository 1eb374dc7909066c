#include "app/completions/completion.h"

#include <fmt/format.h>

namespace thawslip::app::completions {
namespace {

constexpr const char* fish_head =
    R"(# fish completion for thawslip. Made from the program's own description of its commands.

function __thawslip_at
    set -l at thawslip
    for word in (commandline -opc)[2..]
        switch "$at $word"
)";

constexpr const char* middle = R"(                set at "$at $word"
        end
    end
    test "$at" = "$argv"
end

function __thawslip_stocks
    thawslip stock list 2>/dev/null | string replace -r '\s+' \t
end

complete -c thawslip -f
)";

/// The arguments of `complete` that say what a value may be.
std::string offered(const ArgumentDescription& argument) {
    switch (offer_for(argument)) {
    case Offer::Nothing: return "";
    case Offer::Choices: return " -a " + in_quotes(choices_of(argument));
    case Offer::Files: return " -F";
    case Offer::TomlFiles: return " -k -a '(__fish_complete_suffix .toml)'";
    case Offer::Stocks: return " -k -a '(__thawslip_stocks; __fish_complete_suffix .toml)'";
    case Offer::Printers: return " -a '(lpstat -e 2>/dev/null)'";
    }
    return "";
}

std::string option_line(const ArgumentDescription& option, const std::string& when) {
    auto line = "complete -c thawslip" + when;
    if (!option.short_name.empty()) {
        line += " -s " + option.short_name.substr(1);
    }
    line += " -l " + option.long_name.substr(2);
    const bool may_be_left_out = option.value.starts_with('[');
    if (!option.value.empty() && !may_be_left_out) {
        line += " -r";
    }
    return line + (option.value.empty() ? "" : offered(option)) + " -d " + in_quotes(option.about) +
           "\n";
}

} // namespace

std::string fish(const CommandDescription& program) {
    std::string paths;
    std::string lines;
    for (const auto& command : all_commands(program)) {
        const bool is_program = command.path == program.path;
        if (!is_program) {
            paths += " " + in_quotes(command.path);
        }
        const auto when = fmt::format(" -n '__thawslip_at {}'", command.path);
        for (const auto& below : command.commands) {
            lines += fmt::format("complete -c thawslip{} -a {} -d {}\n", when, below.name,
                                 in_quotes(below.about));
        }
        if (!command.words.empty()) {
            lines +=
                fmt::format("complete -c thawslip{}{} -d {}\n", when,
                            offered(command.words.front()), in_quotes(command.words.front().about));
        }
        for (const auto& option : command.options) {
            lines += option_line(option, is_program ? "" : when);
        }
    }
    return std::string{fish_head} + "            case" + paths + "\n" + middle + lines;
}

} // namespace thawslip::app::completions

#include "app/command_line/parse_fault.h"

#include "app/command_line/command_description.h"
#include "base/list.h"
#include "base/nearest.h"

#include <CLI/CLI.hpp>
#include <algorithm>
#include <array>
#include <fmt/format.h>
#include <optional>
#include <string>
#include <utility>
#include <vector>

namespace thawslip::app {
namespace {

struct Fault {
    std::string message;
    std::string hint;
};

/// Options that were called otherwise before.
constexpr std::array<std::pair<std::string_view, std::string_view>, 1> former_options = {
    {{"--spoiled", "--skip"}}};

/// The command that the line got to: "freezer out" of `freezer out --al`.
const CLI::App& command_of(const CLI::App& program) {
    const auto* command = &program;
    for (auto below = command->get_subcommands(); !below.empty();
         below = command->get_subcommands()) {
        command = below.front();
    }
    return *command;
}

/// Its options, and those that stand with any command.
std::vector<ArgumentDescription> options_of(const CLI::App& program) {
    auto options = describe(command_of(program)).options;
    for (auto& option : describe(program).options) {
        if (std::ranges::none_of(options, [&](const ArgumentDescription& one) {
                return one.long_name == option.long_name;
            })) {
            options.push_back(std::move(option));
        }
    }
    return options;
}

std::string where_help_is(const CLI::App& program) {
    return describe(command_of(program)).path + " --help shows what it takes";
}

/// What stands before `mark` in the parser's words; all of them where there is no mark.
std::string before(const std::string& text, std::string_view mark) {
    return text.substr(0, text.find(mark));
}

std::string after(const std::string& text, std::string_view mark) {
    const auto at = text.find(mark);
    return at == std::string::npos ? std::string{} : text.substr(at + mark.size());
}

/// What the parser calls `name`, as its users see it: an option by its name, a word of a command by
/// what stands in the usage, "DAY.toml".
std::string shown_name(const CLI::App& program, const std::string& name) {
    const auto* option = command_of(program).get_option_no_throw(name);
    return option != nullptr && option->get_positional() ? before(option->get_option_text(), "...")
                                                         : name;
}

/// What an option takes: "NAME|FILE"; empty where it is not known.
std::string value_of(const CLI::App& program, const std::string& name) {
    for (const auto& option : options_of(program)) {
        if (option.long_name == name || option.short_name == name) {
            return option.value;
        }
    }
    return {};
}

Fault unexpected_option(const CLI::App& program, const std::string& word) {
    const auto name = before(word, "=");
    const auto names = mapped(options_of(program), &ArgumentDescription::long_name);
    for (const auto& [former, now] : former_options) {
        if (name == former && std::ranges::find(names, now) != names.end()) {
            return {fmt::format("there is no option {}", name),
                    fmt::format("it is called {} now", now)};
        }
    }
    const auto near = nearest(name, names);
    return {fmt::format("{} has no option {}", describe(command_of(program)).path, name),
            near ? fmt::format("did you mean {}?", *near) : where_help_is(program)};
}

/// Words that nothing takes; the first of them is named.
Fault unexpected(const CLI::App& program, const std::string& what) {
    const auto words = after(what, "expected: ");
    const auto word = before(words, " ");
    if (word.starts_with('-')) {
        return unexpected_option(program, word);
    }
    return {
        fmt::format("{} takes no further word: \"{}\"", describe(command_of(program)).path, words),
        "put quotes around what belongs together; " + where_help_is(program)};
}

/// A command, a word or an option that must be there.
Fault missing(const CLI::App& program, const std::string& what) {
    const auto command = describe(command_of(program));
    if (!command.commands.empty() && what.find("ubcommand") != std::string::npos) {
        const auto names = mapped(command.commands, &CommandDescription::name);
        return {"a command is missing", command.path.find(' ') == std::string::npos
                                            ? "thawslip --help lists the commands"
                                            : "the commands are " + list_of(names)};
    }
    const auto name = shown_name(program, before(what, " is required"));
    if (name.starts_with("WORDS|BAG")) {
        return {"no bag is named", fmt::format("name it by words of its dish, or by its id: {} "
                                               "lentil stew",
                                               command.path)};
    }
    if (name.starts_with("PHOTO|")) {
        return {
            "nothing to read is named",
            "a photograph of a label, a bag's id, or words of its dish: thawslip read photo.jpg"};
    }
    return {name + " is missing", where_help_is(program)};
}

/// An option without the value that it takes, with several, or "--trial=maybe", with one that it
/// does not.
Fault other_value(const CLI::App& program, const std::string& what) {
    constexpr std::string_view overridden = " was given a disallowed flag override";
    if (what.ends_with(overridden)) {
        return {fmt::format("--{} takes no value", before(what, overridden)),
                where_help_is(program)};
    }
    const auto name = before(what, ":");
    if (what.find("At Most") != std::string::npos) {
        return {fmt::format("{} is given more than once", name), where_help_is(program)};
    }
    const auto value = value_of(program, name);
    return {fmt::format("{} needs a value{}", name, value.empty() ? "" : ": " + value),
            where_help_is(program)};
}

/// Our own checks say what is wrong with a text; the parser puts the option's name before it, and
/// has words of its own for a number out of its range: "count: Value 900 not in range 1 to 366".
Fault invalid(const CLI::App& program, const std::string& what) {
    const auto name = shown_name(program, before(what, ":"));
    const auto value = before(after(what, "Value "), " not in range");
    const auto range = after(what, "in range ");
    return {range.empty()
                ? fmt::format("{}: {}", name, after(what, ": "))
                : fmt::format("{} takes a number from {}, not \"{}\"", name, range, value),
            where_help_is(program)};
}

Fault apart(const CLI::App& program, const std::string& what) {
    return {fmt::format("{} and {} cannot be used together",
                        shown_name(program, before(what, " excludes ")),
                        shown_name(program, after(what, " excludes "))),
            where_help_is(program)};
}

Fault alone(const CLI::App& program, const std::string& what) {
    const auto other = after(what, " requires ");
    return {
        fmt::format("{} needs {} {}", before(what, " requires "), other, value_of(program, other)),
        where_help_is(program)};
}

/// The first option of a line that no command has. What stands behind it was taken for a word of
/// the command, so whatever else the parser found wrong comes of it.
std::optional<std::string> unknown_option(const CLI::App& program) {
    const auto left_over = program.remaining(true);
    const auto found = std::ranges::find_if(left_over, [](const std::string& word) {
        return word.size() > 1 && word.starts_with('-') && word != "--";
    });
    return found == left_over.end() ? std::nullopt : std::optional{*found};
}

using Explain = Fault (*)(const CLI::App&, const std::string&);

constexpr std::array<std::pair<CLI::ExitCodes, Explain>, 6> explained = {{
    {CLI::ExitCodes::ExtrasError, unexpected},
    {CLI::ExitCodes::RequiredError, missing},
    {CLI::ExitCodes::ArgumentMismatch, other_value},
    {CLI::ExitCodes::ValidationError, invalid},
    {CLI::ExitCodes::ExcludesError, apart},
    {CLI::ExitCodes::RequiresError, alone},
}};

} // namespace

std::string parse_fault_text(const CLI::App& program, const CLI::ParseError& error) {
    Fault fault{"this command line cannot be read", where_help_is(program)};
    const auto unknown = unknown_option(program);
    if (unknown) {
        fault = unexpected_option(program, *unknown);
    }
    for (const auto& [code, explain] : explained) {
        if (!unknown && error.get_exit_code() == static_cast<int>(code)) {
            fault = explain(program, error.what());
        }
    }
    return fmt::format("error: {}\n    hint: {}\n", fault.message, fault.hint);
}

} // namespace thawslip::app

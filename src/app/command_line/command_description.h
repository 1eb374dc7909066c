#pragma once

#include <string>
#include <vector>

namespace CLI {
class App;
}

namespace thawslip::app {

/// An option or a word of a command, as its users see it.
struct ArgumentDescription {
    std::string short_name; ///< "-o"; empty: none
    std::string long_name;  ///< "--output"; empty for a word that has its place
    std::string value;      ///< what it takes: "FILE", "letter|a4"; empty for a flag
    std::string about;
    bool required = false;
    std::string range; ///< "1 - 366": the whole numbers it takes; empty where none are set
};

/// A command with all that is below it. Help, completions and the tests that hold the manual page
/// are made from this, so that no two of them can differ.
struct CommandDescription {
    std::string path; ///< "thawslip stock show"
    std::string name; ///< "show"
    std::string about;
    std::vector<ArgumentDescription> words;   ///< in their order
    std::vector<ArgumentDescription> options; ///< in the order told
    std::vector<CommandDescription> commands;
    std::vector<std::string> notes; ///< lines below the options: examples, what else to know
};

/// Reads the description off the parser.
CommandDescription describe(const CLI::App& app);

/// A line of a command's notes that is an example: a command line, up to any "  # …".
/// \returns the command line, or nothing where the line is no example
std::string example_in(const std::string& note);

} // namespace thawslip::app

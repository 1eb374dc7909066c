// What --help prints, line by line.

#include "app/command_line/command_description.h"
#include "app/command_line/help_text.h"

#include <doctest/doctest.h>
#include <sstream>
#include <vector>

using namespace thawslip::app;

namespace {

std::vector<std::string> lines_of(const std::string& text) {
    std::istringstream stream{text};
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

/// What is said of a command about which nothing else is known.
std::vector<std::string> help_about(const std::string& about) {
    CommandDescription command;
    command.path = "thawslip stew";
    command.about = about;
    return lines_of(help_text(command));
}

} // namespace

TEST_CASE("lines are filled up to 80 columns, and not one more") {
    const std::string half(40, 'a');
    const auto full = half + " " + std::string(39, 'b');
    CHECK(help_about(full).front() == full);
    const auto longer = help_about(half + " " + std::string(40, 'b'));
    REQUIRE(longer.size() > 1);
    CHECK(longer[0] == half);
    CHECK(longer[1] == std::string(40, 'b'));
    std::string of_two_bytes;
    for (int i = 0; i < 39; ++i) {
        of_two_bytes += "ü";
    }
    CHECK(help_about(half + " " + of_two_bytes).front() == half + " " + of_two_bytes);
}

TEST_CASE("what an option is for stands beside it, or below a name that is too long") {
    CommandDescription command;
    command.path = "thawslip stew";
    command.about = "cook it";
    command.options = {{"-o", "--output", "FILE", "what to write", true, ""},
                       {"", "--hot", "", "at once", false, ""}};
    CHECK(help_text(command) == "cook it\n\n"
                                "Usage: thawslip stew --output FILE [OPTION...]\n\n"
                                "Options:\n"
                                "  -o, --output FILE  what to write\n"
                                "  --hot              at once\n");
}

TEST_CASE("examples stand apart under their heading, sentences as they are") {
    CommandDescription command;
    command.path = "thawslip stew";
    command.about = "cook it";
    command.notes = {"Mind the lid.", "thawslip stew day.toml", "thawslip stew --hot  # at once",
                     "Serves six."};
    const auto text = help_text(command);
    CHECK(text.ends_with("\nMind the lid.\n\nExamples:\n  thawslip stew day.toml\n"
                         "  thawslip stew --hot  # at once\n\nServes six.\n"));
    command.notes = {"thawslip stew day.toml"};
    CHECK(help_text(command).ends_with("[OPTION...]\n\nExamples:\n  thawslip stew day.toml\n"));
}

TEST_CASE("a name of 28 columns has its words beside it, one of 29 below it") {
    CommandDescription command;
    command.path = "thawslip stew";
    command.about = "cook it";
    const auto option = [](std::size_t columns) {
        return ArgumentDescription{"", "--" + std::string(columns - 2, 'x'), "", "at once", false,
                                   ""};
    };
    command.options = {option(28), option(5)};
    auto lines = lines_of(help_text(command));
    CHECK(lines[lines.size() - 2] == "  --" + std::string(26, 'x') + "  at once");
    CHECK(lines.back() == "  --xxx" + std::string(25, ' ') + "at once");
    command.options = {option(29), option(5)};
    lines = lines_of(help_text(command));
    CHECK(lines[lines.size() - 3] == "  --" + std::string(27, 'x'));
    CHECK(lines[lines.size() - 2] == "         at once"); // as if it were as wide as the others
    CHECK(lines.back() == "  --xxx  at once");
}

TEST_CASE("words for a table are broken where the page ends, and go on below themselves") {
    CommandDescription command;
    command.path = "thawslip stew";
    command.about = "cook it";
    // Beside "  --hot  " there are 71 columns.
    const std::string half(35, 'a');
    command.options = {{"", "--hot", "", half + " " + half, false, ""}};
    CHECK(lines_of(help_text(command)).back() == "  --hot  " + half + " " + half);
    command.options[0].about += "a";
    auto lines = lines_of(help_text(command));
    CHECK(lines[lines.size() - 2] == "  --hot  " + half);
    CHECK(lines.back() == "         " + half + "a");
}

TEST_CASE("what must be named stands bare in the usage, what may be in brackets") {
    CommandDescription command;
    command.path = "thawslip stew";
    command.about = "cook it";
    command.words = {{"", "", "DAY.toml...", "the day", true, ""},
                     {"", "", "POT", "in it", false, ""}};
    CommandDescription below;
    below.name = "stir";
    below.about = "slowly";
    command.commands = {below};
    const auto text = help_text(command);
    CHECK(text ==
          "cook it\n\nUsage: thawslip stew DAY.toml... [POT] COMMAND [OPTION...]\n"
          "\nCommands:\n  stir  slowly\n\nWords:\n  DAY.toml...  the day\n  POT          in it\n");
}

TEST_CASE("an example is a line that begins with the program, without its remark") {
    CHECK(example_in("thawslip check day.toml") == "thawslip check day.toml");
    CHECK(example_in("thawslip check day.toml   # first") == "thawslip check day.toml");
    CHECK(example_in("thawslip check a#b.toml") == "thawslip check a#b.toml");
    CHECK(example_in("Mind thawslip check") == "");
    CHECK(example_in("thawslip") == "");
}

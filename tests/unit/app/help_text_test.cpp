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

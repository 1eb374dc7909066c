// What to type when something happens: the answers of `thawslip help`, and the README's.

#include "app/command_line/command_description.h"
#include "app/command_line/command_line.h"
#include "app/help/tasks.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <regex>
#include <sstream>

using namespace thawslip;
using namespace thawslip::app;
using namespace thawslip::test_support;

namespace {

std::string readme_in_one_line() {
    auto text = read_file(THAWSLIP_SOURCE_DIR "/README.md");
    std::ranges::replace(text, '\n', ' ');
    return text;
}

std::vector<std::string> lines_of(std::string_view text) {
    std::istringstream stream{std::string{text}};
    std::vector<std::string> lines;
    for (std::string line; std::getline(stream, line);) {
        lines.push_back(line);
    }
    return lines;
}

std::vector<std::string> answers_to(std::string_view words) {
    std::vector<std::string> found;
    for (const auto& task : tasks_about(words)) {
        found.emplace_back(task.when);
    }
    return found;
}

/// What help shows of printing a whole day: its own lines and the examples of its commands. Those
/// that name a bag by an id are about a bag that nobody has.
std::vector<std::string> prints_of_days() {
    std::vector<std::string> shown;
    for (const auto& task : all_tasks()) {
        const auto lines = lines_of(task.commands);
        shown.insert(shown.end(), lines.begin(), lines.end());
    }
    for (const auto& command : program_description().commands) {
        shown.insert(shown.end(), command.notes.begin(), command.notes.end());
    }
    std::erase_if(shown, [](const std::string& line) {
        const std::regex print{"thawslip (labels|cards|lists|check|text) saturday.toml.*"};
        return !std::regex_match(line, print) || line.find("K7Q") != std::string::npos;
    });
    return shown;
}

/// Four dishes of an orchard's packing day, of 60 bags.
std::string large_day(const std::string& made) {
    std::string day = "[day]\nmade = " + made + "\n";
    for (const std::string dish : {"Lentil stew", "Leek chowder", "Pear compote", "Chestnut pan"}) {
        day += "[[package]]\ndish = \"" + dish +
               "\"\nbags = 15\nservings = 4\nfood = \"soup or stew\"\ncontains = [\"celery\"]\n"
               "weight = \"800 g\"\nthickness = \"25 mm\"\nthaw.method = \"refrigerator\"\n"
               "cook = {in = \"pot\", time = \"20 min\", until = \"75 °C\"}\n";
    }
    return day;
}

} // namespace

TEST_CASE("what help shows of printing a day can be done on the usual sheets of either paper") {
    for (const std::string paper : {"letter", "a4"}) {
        const ScratchFolder folder;
        write_file(folder / "saturday.toml", large_day("2026-10-17"));
        write_file(folder / "sunday.toml", large_day("2026-10-18"));
        write_file(folder / "settings.toml", "paper = \"" + paper + "\"\n");
        write_file(folder / "my-sheet.toml",
                   read_file(THAWSLIP_SOURCE_DIR "/layouts/stock/" + paper + "-full.toml"));
        const auto prints = prints_of_days();
        CHECK(prints.size() > 20);
        for (const auto& line : prints) {
            const auto words = std::regex_replace(
                line, std::regex{"^thawslip|--print( [a-z]+)?|  #.*"}, std::string{});
            const bool to_printer = line.find("--print") != std::string::npos;
            const auto outcome =
                run("cd " + shell_word(folder.path().string()) + "; HOME=$PWD XDG_DATA_HOME=$PWD " +
                    "XDG_CONFIG_HOME=$PWD " THAWSLIP_PROGRAM " --settings settings.toml" + words +
                    (to_printer ? " -o printed.pdf" : ""));
            CAPTURE(line);
            CAPTURE(outcome.err);
            CHECK(outcome.status == 0);
        }
    }
}

TEST_CASE("the README shows what `thawslip help` answers, command for command") {
    const auto readme = readme_in_one_line();
    for (const auto& task : all_tasks()) {
        CAPTURE(task.when);
        CHECK(readme.find("**When " + std::string{task.when} + ":**") != std::string::npos);
        CHECK((task.mind.empty() || readme.find(task.mind) != std::string::npos));
        for (const auto& line : lines_of(task.commands)) {
            CAPTURE(line);
            CHECK(line.starts_with("thawslip "));
            CHECK(readme.find(" " + line + " ") != std::string::npos);
        }
    }
}

TEST_CASE("words of any order, case and ending find the answer that has the most of them") {
    CHECK(answers_to("LABEL LOST") ==
          std::vector<std::string>{"a label came off or cannot be read"});
    CHECK(answers_to("jam") == std::vector<std::string>{"the printer jammed"});
    CHECK(answers_to("cut power") == std::vector<std::string>{"the power was cut"});
    CHECK(answers_to("guest allerg") == std::vector<std::string>{"a guest has an allergy"});
    CHECK(answers_to("zeppelin").empty());
    CHECK(answers_to("").size() == 0);
}

TEST_CASE("help lists its questions, and says where there is no answer") {
    const std::string program = THAWSLIP_PROGRAM;
    const auto all = run(program + " help");
    CHECK(all.status == 0);
    for (const auto& task : all_tasks()) {
        CHECK(all.out.find(task.when) != std::string::npos);
    }
    const auto one = run(program + " help label lost");
    CHECK(one.out.find("thawslip reprint") != std::string::npos);
    for (const auto& task : all_tasks()) { // with what is to be minded, where there is anything
        const auto answer = run(program + " help " + shell_word(std::string{task.when}));
        CAPTURE(task.when);
        CHECK(answer.out.find(task.mind) != std::string::npos);
        CHECK(answer.out.find("\n    \n") == std::string::npos);
    }
    const auto none = run(program + " help zeppelin");
    CHECK(none.status == 1);
    CHECK(none.err == "error: no answer has the words \"zeppelin\"\n"
                      "    hint: thawslip help lists what it answers\n");
}

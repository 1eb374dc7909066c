// What to type when something happens: the answers of `thawslip help`, and the README's.

#include "app/command_line/command_line.h"
#include "app/help/tasks.h"
#include "support/command.h"

#include <algorithm>
#include <doctest/doctest.h>
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

} // namespace

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

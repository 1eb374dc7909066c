// What the program makes of itself when it starts itself again. Started again here is this program
// of tests, with one of the cases that are skipped otherwise.

#include "app/desk/child_process.h"
#include "support/command.h"
#include "support/variable.h"

#include <chrono>
#include <csignal>
#include <doctest/doctest.h>
#include <iostream>
#include <sys/wait.h>
#include <unistd.h>

namespace child_process_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;

namespace {

constexpr std::size_t megabyte = 1'000'000; // sixteen times what a pipe holds (pipe(7), Linux)

app::Ended run_case(const char* name, const std::string& input,
                    std::chrono::milliseconds patience = 60s, std::size_t most = 4 * megabyte) {
    return app::run_self({std::string{"--test-case="} + name, "--no-skip"}, input, patience, most);
}

} // namespace

TEST_CASE("(started by others) says all that it hears" * doctest::skip()) {
    std::cout << std::cin.rdbuf() << std::flush;
}

TEST_CASE("(started by others) listens to nothing and fails" * doctest::skip()) {
    std::cout << "not today" << std::flush;
    ::_exit(3);
}

TEST_CASE("(started by others) never ends" * doctest::skip()) {
    for (;;) {
        ::pause();
    }
}

TEST_CASE("more than a pipe holds goes to another process and comes back") {
    std::string input;
    while (input.size() < megabyte) {
        input += "a line of its own, number " + std::to_string(input.size()) + "\n";
    }
    const auto ended = run_case("*says all that it hears", input);
    CHECK(ended.ended_well);
    CHECK(ended.output.find(input) != std::string::npos);
}

TEST_CASE("who is handed nothing hears the end at once") {
    const auto ended = run_case("*says all that it hears", "");
    CHECK(ended.ended_well);
}

TEST_CASE("one that takes nothing of what it is handed and fails has not ended well") {
    std::signal(SIGPIPE, SIG_IGN); // as the desk has it
    const auto ended = run_case("*listens to nothing*", std::string(megabyte, 'x'));
    CHECK_FALSE(ended.ended_well);
    CHECK(ended.output.find("not today") != std::string::npos);
}

TEST_CASE("one that never ends is ended when patience does") {
    const auto begun = std::chrono::steady_clock::now();
    const auto ended = run_case("*never ends", "", 200ms);
    CHECK_FALSE(ended.ended_well);
    CHECK(std::chrono::steady_clock::now() - begun >= 200ms);
}

TEST_CASE("one that says more than may be is ended, though all would be well") {
    const auto ended =
        run_case("*says all that it hears", std::string(megabyte, 'x'), 60s, megabyte / 2);
    CHECK_FALSE(ended.ended_well);
    CHECK(ended.output.size() > megabyte / 2);
    CHECK(ended.output.size() < megabyte);
}

TEST_CASE("another program is found as a shell finds it, and has a session of its own") {
    const ScratchFolder folder;
    const auto script = folder / "neighbour";
    const auto note = folder / "note";
    write_file(script,
               "#!/bin/sh\nword=$1\nread line || line=nothing\n"
               "set -- $(cat /proc/$$/stat)\n" // proc(5): process, name, state, ..., session
               "echo \"$word, $line, $6 $1\" >" +
                   note + "\n");
    std::filesystem::permissions(script, std::filesystem::perms::owner_all);
    const Variable path{"PATH", folder.path().string() + ":/usr/bin:/bin"};
    const auto process = app::start_program({"neighbour", "a word"});
    REQUIRE(process > 0);
    int status = -1;
    REQUIRE(::waitpid(process, &status, 0) == process);
    CHECK(status == 0);
    const auto own = std::to_string(process);
    CHECK(read_file(note) == "a word, nothing, " + own + " " + own + "\n");
    CHECK(app::start_program({"no-such-neighbour"}) == -1);
}

} // namespace child_process_test

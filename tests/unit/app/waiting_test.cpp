// What ends the desk.

#include "app/desk/waiting.h"
#include "support/terminal.h"

#include <chrono>
#include <csignal>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

namespace waiting_test {

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::chrono_literals;
using Clock = std::chrono::steady_clock;

namespace {

/// What another process says of how its waiting ended: signals are the whole process's. It has them
/// as a shell gives them, whether or not the tests are run by nohup(1).
template <class Wait>
int ended_by(Wait wait) {
    const auto child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        for (const int number : {SIGINT, SIGTERM, SIGHUP}) {
            std::signal(number, SIG_DFL);
        }
        ::_exit(100 + static_cast<int>(wait()));
    }
    int state = 0;
    REQUIRE(::waitpid(child, &state, 0) == child);
    return WIFEXITED(state) ? WEXITSTATUS(state) - 100 : -WTERMSIG(state);
}

constexpr int by(app::End end) {
    return static_cast<int>(end);
}

const auto asked_now = [] { return Clock::now(); };

} // namespace

TEST_CASE("a signal that asks a program to end ends the waiting, also one that came before") {
    for (const int number : {SIGINT, SIGTERM, SIGHUP}) {
        CAPTURE(number);
        CHECK(ended_by([&] {
                  const app::Waiting waiting;
                  ::raise(number);
                  return waiting.wait(1h, asked_now, [] {});
              }) == by(app::End::Signal));
    }
}

TEST_CASE("what was ignored at the start, as nohup(1) has it, ends nothing") {
    CHECK(ended_by([] {
              std::signal(SIGHUP, SIG_IGN);
              const app::Waiting waiting;
              int seconds = 0;
              return waiting.wait(1h, asked_now,
                                  [&] { ::raise(++seconds == 1 ? SIGHUP : SIGTERM); });
          }) == by(app::End::Signal));
}

TEST_CASE("nobody has asked for long: that is an end, and not before") {
    CHECK(ended_by([] {
              const app::Waiting waiting;
              const auto begun = Clock::now();
              const auto end = waiting.wait(
                  1500ms, [=] { return begun; }, [] {});
              return Clock::now() - begun >= 1500ms ? end : app::End::Signal;
          }) == by(app::End::Idle));
}

TEST_CASE("a terminal that goes ends the waiting, but where none was none can go") {
    if (!has_terminals()) {
        return;
    }
    const Terminal terminal;
    const int nowhere = ::open("/dev/null", O_RDWR);
    const auto begun_at = [&](int input) {
        return ended_by([&] {
            ::dup2(input, STDIN_FILENO);
            const app::Waiting waiting;
            int seconds = 0;
            return waiting.wait(1h, asked_now, [&] {
                ::dup2(nowhere, STDIN_FILENO);
                if (++seconds == 2) {
                    ::raise(SIGTERM);
                }
            });
        });
    };
    CHECK(begun_at(terminal.end()) == by(app::End::Terminal));
    CHECK(begun_at(nowhere) == by(app::End::Signal));
    ::close(nowhere);
}

} // namespace waiting_test

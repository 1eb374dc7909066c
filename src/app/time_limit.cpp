#include "app/time_limit.h"

#include "app/exit_status.h"

#include <csignal>
#include <string_view>
#include <sys/time.h>
#include <unistd.h>

namespace thawslip::app {
namespace {

/// Only what POSIX allows in a signal handler.
void give_up(int) {
    constexpr std::string_view words =
        "error: the picture takes too long to read\n"
        "    hint: photograph the label alone, from straight above\n";
    const auto written = ::write(STDERR_FILENO, words.data(), words.size());
    ::_exit(static_cast<int>(written < 0 ? ExitStatus::SystemFailed : ExitStatus::Refused));
}

void set_timer(int seconds) {
    itimerval timer{};
    timer.it_value.tv_sec = seconds;
    ::setitimer(ITIMER_PROF, &timer, nullptr);
}

} // namespace

TimeLimit::TimeLimit(int seconds) {
    std::signal(SIGPROF, give_up);
    set_timer(seconds);
}

TimeLimit::~TimeLimit() {
    set_timer(0);
    std::signal(SIGPROF, SIG_DFL);
}

} // namespace thawslip::app

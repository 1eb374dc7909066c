#include "app/desk/waiting.h"

#include <csignal>
#include <unistd.h>

namespace thawslip::app {
namespace {

bool is_ignored(int number) {
    struct sigaction now {};
    return ::sigaction(number, nullptr, &now) == 0 && now.sa_handler == SIG_IGN;
}

bool has_terminal() {
    return ::isatty(STDIN_FILENO) == 1;
}

} // namespace

Waiting::Waiting() : signals_{}, had_terminal_{has_terminal()} {
    ::sigemptyset(&signals_);
    for (const int number : {SIGINT, SIGTERM, SIGHUP}) {
        if (!is_ignored(number)) {
            ::sigaddset(&signals_, number);
        }
    }
    ::pthread_sigmask(SIG_BLOCK, &signals_, nullptr);
}

End Waiting::wait(std::chrono::milliseconds idle,
                  const std::function<std::chrono::steady_clock::time_point()>& last_request,
                  const std::function<void()>& each_second) const {
    for (;;) {
        const timespec second{1, 0};
        if (::sigtimedwait(&signals_, nullptr, &second) > 0) {
            return End::Signal;
        }
        if (had_terminal_ && !has_terminal()) {
            return End::Terminal;
        }
        if (std::chrono::steady_clock::now() - last_request() >= idle) {
            return End::Idle;
        }
        each_second();
    }
}

} // namespace thawslip::app

#include "app/process.h"

#include "app/exit_status.h"

#include <csignal>
#include <fcntl.h>
#include <fmt/format.h>
#include <sys/resource.h>
#include <unistd.h>

namespace thawslip::app {

namespace {

/// Four times what any command was seen to take, on one thread.
constexpr rlim_t least_stack = rlim_t{1} << 20U;

} // namespace

void prepare_process() {
    for (int descriptor = STDIN_FILENO; descriptor <= STDERR_FILENO; ++descriptor) {
        if (::fcntl(descriptor, F_GETFD) < 0) {
            ::open("/dev/null", O_RDONLY); // takes the lowest number that is free: this one
        }
    }
    std::signal(SIGXFSZ, SIG_IGN);
    rlimit stack{};
    if (::getrlimit(RLIMIT_STACK, &stack) == 0 && stack.rlim_cur < least_stack) {
        throw SystemFailure{fmt::format("the stack is limited to {} KiB, and {} KiB are needed "
                                        "(ulimit -s)",
                                        stack.rlim_cur / 1024, least_stack / 1024)};
    }
}

} // namespace thawslip::app

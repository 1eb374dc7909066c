#include "app/process.h"

#include <csignal>
#include <fcntl.h>
#include <unistd.h>

namespace thawslip::app {

void prepare_process() {
    for (int descriptor = STDIN_FILENO; descriptor <= STDERR_FILENO; ++descriptor) {
        if (::fcntl(descriptor, F_GETFD) < 0) {
            ::open("/dev/null", O_RDONLY); // takes the lowest number that is free: this one
        }
    }
    std::signal(SIGXFSZ, SIG_IGN);
}

} // namespace thawslip::app

#include "app/time_limit.h"

#include <doctest/doctest.h>
#include <fcntl.h>
#include <sys/wait.h>
#include <unistd.h>

using namespace thawslip;

TEST_CASE("work that takes too long ends the program as refused") {
    const auto child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::dup2(::open("/dev/null", O_WRONLY), STDERR_FILENO);
        const app::TimeLimit until{1};
        for (;;) {
            ::getppid(); // work without end
        }
    }
    int state = 0;
    REQUIRE(::waitpid(child, &state, 0) == child);
    REQUIRE(WIFEXITED(state));
    CHECK(WEXITSTATUS(state) == 1);
}

// What a program makes sure of before anything else: its standard streams (POSIX, "stdin"), its
// stack (getrlimit(2)) and what a limit of file sizes does (POSIX, setrlimit(): SIGXFSZ).

#include "app/exit_status.h"
#include "app/process.h"

#include <csignal>
#include <doctest/doctest.h>
#include <fcntl.h>
#include <string>
#include <sys/resource.h>
#include <sys/wait.h>
#include <unistd.h>

namespace process_test {

using namespace thawslip;

namespace {

/// What another process says of itself, for all of this is the whole process's.
template <class Say>
int said_by_child(const Say& say) {
    const auto child = ::fork();
    REQUIRE(child >= 0);
    if (child == 0) {
        ::_exit(say());
    }
    int state = 0;
    REQUIRE(::waitpid(child, &state, 0) == child);
    return WIFEXITED(state) ? WEXITSTATUS(state) : -WTERMSIG(state);
}

/// The words of a failure, if there is one, of a stack of so many KiB.
bool is_refused_with_stack(rlim_t kibibytes) {
    return said_by_child([kibibytes] {
               rlimit stack{};
               ::getrlimit(RLIMIT_STACK, &stack);
               stack.rlim_cur = kibibytes * 1024;
               ::setrlimit(RLIMIT_STACK, &stack);
               try {
                   app::prepare_process();
                   return 0;
               } catch (const SystemFailure& failure) {
                   const std::string words = "the stack is limited to " +
                                             std::to_string(kibibytes) +
                                             " KiB, and 1024 KiB are needed (ulimit -s)";
                   return words == failure.what() ? 1 : 2;
               }
           }) == 1;
}

} // namespace

TEST_CASE("a standard stream that is closed is one that nothing can be written to, and no file's") {
    for (int closed = 0; closed < 8; ++closed) {
        CAPTURE(closed);
        CHECK(said_by_child([closed] {
                  for (int stream = 0; stream < 3; ++stream) {
                      if ((closed >> stream & 1) != 0) {
                          ::close(stream);
                      }
                  }
                  app::prepare_process();
                  for (int stream = 0; stream < 3; ++stream) {
                      if (::fcntl(stream, F_GETFD) < 0) {
                          return 1;
                      }
                      const bool was_closed = (closed >> stream & 1) != 0;
                      if (was_closed && ::write(stream, "x", 1) >= 0) {
                          return 2;
                      }
                  }
                  const int file = ::open("/dev/null", O_WRONLY);
                  return file > STDERR_FILENO ? 0 : 3;
              }) == 0);
    }
}

TEST_CASE("a file that grows beyond its limit is a failed write, and no end of the program") {
    CHECK(said_by_child([] {
              app::prepare_process();
              ::raise(SIGXFSZ);
              return 0;
          }) == 0);
}

TEST_CASE("a stack of less than a mebibyte is refused in words") {
    CHECK(is_refused_with_stack(512));
    CHECK(is_refused_with_stack(1023));
    CHECK_FALSE(is_refused_with_stack(1024));
    CHECK_FALSE(is_refused_with_stack(8192));
}

} // namespace process_test

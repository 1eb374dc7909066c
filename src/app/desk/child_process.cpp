#include "app/desk/child_process.h"

#include "app/files/descriptor.h"
#include "base/system_failure.h"

#include <algorithm>
#include <array>
#include <cerrno>
#include <csignal>
#include <cstring>
#include <fcntl.h>
#include <fmt/format.h>
#include <poll.h>
#include <spawn.h>
#include <sys/wait.h>
#include <unistd.h>

extern char** environ;

namespace thawslip::app {
namespace {

using Clock = std::chrono::steady_clock;

struct Pipe {
    Descriptor read;
    Descriptor write;
};

std::array<int, 2> new_pipe() {
    std::array<int, 2> ends{};
    if (::pipe2(ends.data(), O_CLOEXEC) != 0) {
        throw SystemFailure{fmt::format("cannot make a pipe: {}", std::strerror(errno))};
    }
    return ends;
}

Pipe make_pipe() {
    const auto ends = new_pipe();
    return {Descriptor{ends[0]}, Descriptor{ends[1]}};
}

std::vector<char*> pointers_to(std::vector<std::string>& words) {
    std::vector<char*> pointers;
    for (auto& word : words) {
        pointers.push_back(word.data());
    }
    pointers.push_back(nullptr);
    return pointers;
}

/// What is done to the standard streams of a process before it starts, and to signals that are
/// blocked or ignored here: not there.
class Start {
public:
    Start() {
        ::posix_spawn_file_actions_init(&files_);
        ::posix_spawnattr_init(&attributes_);
        sigset_t none;
        sigset_t usual;
        ::sigemptyset(&none);
        ::sigemptyset(&usual);
        ::sigaddset(&usual, SIGPIPE);
        ::posix_spawnattr_setsigmask(&attributes_, &none);
        ::posix_spawnattr_setsigdefault(&attributes_, &usual);
        ::posix_spawnattr_setflags(&attributes_, flags_);
    }
    Start(const Start&) = delete;
    Start& operator=(const Start&) = delete;
    ~Start() {
        ::posix_spawn_file_actions_destroy(&files_);
        ::posix_spawnattr_destroy(&attributes_);
    }

    /// A session of its own: what ends this program from its terminal does not end the other.
    void part() {
        flags_ = static_cast<short>(flags_ | POSIX_SPAWN_SETSID);
        ::posix_spawnattr_setflags(&attributes_, flags_);
    }
    void lead(int stream, int descriptor) {
        ::posix_spawn_file_actions_adddup2(&files_, descriptor, stream);
    }
    void silence(int stream) {
        ::posix_spawn_file_actions_addopen(&files_, stream, "/dev/null", O_RDWR, 0);
    }
    /// \returns the process; -1 where there is none
    pid_t start(const std::string& program, std::vector<std::string> words) {
        auto pointers = pointers_to(words);
        pid_t process = -1;
        const int fault = ::posix_spawnp(&process, program.c_str(), &files_, &attributes_,
                                         pointers.data(), environ);
        return fault == 0 ? process : -1;
    }

private:
    posix_spawn_file_actions_t files_{};
    posix_spawnattr_t attributes_{};
    short flags_ = POSIX_SPAWN_SETSIGMASK | POSIX_SPAWN_SETSIGDEF;
};

bool write_some(Descriptor& to, std::string_view& left) {
    const auto written = ::write(to.number(), left.data(), left.size());
    if (written < 0 && errno != EAGAIN && errno != EINTR) {
        to.close(); // the process wants no more of it
        return false;
    }
    left.remove_prefix(written > 0 ? static_cast<std::size_t>(written) : 0);
    if (left.empty()) {
        to.close();
    }
    return true;
}

/// \returns whether there may be more
bool read_some(const Descriptor& from, std::string& output) {
    std::array<char, 4096> part{};
    const auto size = ::read(from.number(), part.data(), part.size());
    if (size > 0) {
        output.append(part.data(), static_cast<std::size_t>(size));
    }
    return size > 0 || (size < 0 && (errno == EINTR || errno == EAGAIN));
}

/// Writes and reads until the process ends its output. \returns whether it did so in time, and
/// with no more than `most_output`
bool talk(Descriptor& to, const Descriptor& from, std::string_view input, std::string& output,
          Clock::time_point until, std::size_t most_output) {
    ::fcntl(to.number(), F_SETFL, O_NONBLOCK);
    for (;;) {
        const auto left =
            std::chrono::duration_cast<std::chrono::milliseconds>(until - Clock::now()).count();
        if (left <= 0 || output.size() > most_output) {
            return false;
        }
        std::array<pollfd, 2> ends{{{from.number(), POLLIN, 0}, {to.number(), POLLOUT, 0}}};
        ::poll(ends.data(), ends.size(), static_cast<int>(std::min<long>(left, 1000)));
        if (ends[1].revents != 0) {
            write_some(to, input);
        }
        if (ends[0].revents != 0 && !read_some(from, output)) {
            return true;
        }
    }
}

bool waited_well(pid_t process) {
    int status = 0;
    while (::waitpid(process, &status, 0) < 0) {
        if (errno != EINTR) {
            return false;
        }
    }
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

} // namespace

Ended run_self(const std::vector<std::string>& words, const std::string& input,
               std::chrono::milliseconds patience, std::size_t most_output) {
    auto in = make_pipe();
    auto out = make_pipe();
    Start start;
    start.lead(STDIN_FILENO, in.read.number());
    start.lead(STDOUT_FILENO, out.write.number());
    start.silence(STDERR_FILENO);
    std::vector<std::string> all{"thawslip"};
    all.insert(all.end(), words.begin(), words.end());
    const auto process = start.start("/proc/self/exe", std::move(all));
    if (process < 0) {
        throw SystemFailure{"cannot start a process that reads the picture"};
    }
    in.read.close();
    out.write.close();
    Ended ended;
    const bool in_time =
        talk(in.write, out.read, input, ended.output, Clock::now() + patience, most_output);
    if (!in_time) {
        ::kill(process, SIGKILL);
    }
    ended.ended_well = waited_well(process) && in_time;
    return ended;
}

pid_t start_program(const std::vector<std::string>& words) {
    Start start;
    start.part();
    for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
        start.silence(stream);
    }
    return start.start(words.front(), words);
}

} // namespace thawslip::app

#include "traced.h"

#include <array>
#include <csignal>
#include <cstddef>
#include <cstdlib>
#include <fcntl.h>
#include <fmt/format.h>
#include <linux/filter.h>
#include <linux/seccomp.h>
#include <map>
#include <stdexcept>
#include <sys/prctl.h>
#include <sys/ptrace.h>
#include <sys/syscall.h>
#include <sys/wait.h>
#include <unistd.h>

namespace thawslip::test_support {
namespace {

/// What of a call's arguments says which file it is about.
enum class About { Descriptor, Path };

struct Call {
    const char* name = "";
    About about = About::Descriptor;
    int argument = 0;
};

/// The system calls that change what is on the disk.
const std::map<std::uint64_t, Call>& changing_calls() {
    static const std::map<std::uint64_t, Call> calls = {
        {SYS_write, {"write", About::Descriptor, 0}},
        {SYS_pwrite64, {"write", About::Descriptor, 0}},
        {SYS_writev, {"write", About::Descriptor, 0}},
        {SYS_pwritev, {"write", About::Descriptor, 0}},
        {SYS_ftruncate, {"truncate", About::Descriptor, 0}},
        {SYS_fallocate, {"allocate", About::Descriptor, 0}},
        {SYS_fsync, {"sync", About::Descriptor, 0}},
        {SYS_fdatasync, {"sync", About::Descriptor, 0}},
        {SYS_fchmod, {"mode", About::Descriptor, 0}},
        {SYS_openat, {"create", About::Path, 1}},
        {SYS_unlinkat, {"unlink", About::Path, 1}},
        {SYS_mkdirat, {"mkdir", About::Path, 1}},
        {SYS_renameat2, {"rename", About::Path, 3}},
        {SYS_linkat, {"link", About::Path, 3}},
#ifdef SYS_rename // newer machines have only the calls above
        {SYS_renameat, {"rename", About::Path, 3}},
        {SYS_rename, {"rename", About::Path, 1}},
        {SYS_unlink, {"unlink", About::Path, 0}},
        {SYS_mkdir, {"mkdir", About::Path, 0}},
        {SYS_open, {"create", About::Path, 0}},
#endif
    };
    return calls;
}

std::string text_at(pid_t child, std::uint64_t address) {
    std::string text;
    for (;; address += sizeof(long)) {
        const long word = ::ptrace(PTRACE_PEEKDATA, child, address, nullptr);
        for (std::size_t i = 0; i < sizeof(long); ++i) {
            const char c = static_cast<char>((static_cast<unsigned long>(word) >> (8 * i)) & 0xFFU);
            if (c == '\0' || text.size() > 4096) {
                return text;
            }
            text += c;
        }
    }
}

std::string path_of_descriptor(pid_t child, std::uint64_t descriptor) {
    std::error_code error;
    return std::filesystem::read_symlink(fmt::format("/proc/{}/fd/{}", child, descriptor), error)
        .string();
}

/// The step that the child is about to take; nothing where its call changes no file.
bool read_step(pid_t child, Step& step) {
    __ptrace_syscall_info info{};
    if (::ptrace(PTRACE_GET_SYSCALL_INFO, child, sizeof info, &info) <= 0 ||
        info.op != PTRACE_SYSCALL_INFO_SECCOMP) {
        return false;
    }
    const auto& call = changing_calls().at(info.seccomp.nr);
    const auto* arguments = info.seccomp.args;
    const std::string_view name = call.name;
    if (name == "create") {
        const auto flags = arguments[call.argument + 1];
        if ((flags & static_cast<unsigned>(O_CREAT)) == 0) {
            return false;
        }
    }
    step.call = call.name;
    step.path = call.about == About::Descriptor
                    ? path_of_descriptor(child, arguments[call.argument])
                    : text_at(child, arguments[call.argument]);
    // What is only said, or only read again by nobody, is no change of the disk.
    return step.path != "/dev/null" && !step.path.starts_with("pipe:");
}

/// Lets the child go on to its next stop. \returns whether it stops once more
bool go_on(pid_t child, int signal, int& state) {
    ::ptrace(PTRACE_CONT, child, nullptr, signal);
    return ::waitpid(child, &state, 0) == child && WIFSTOPPED(state);
}

/// Has the kernel stop this program, and what it becomes, before the calls that change a file: of a
/// thousand calls a print makes, only these are worth two switches to the tracer and back (Linux
/// manual pages, seccomp(2), "Seccomp filter mode").
bool stop_before_changes() {
    std::vector<sock_filter> filter = {
        {BPF_LD | BPF_W | BPF_ABS, 0, 0, offsetof(seccomp_data, nr)}};
    for (const auto& [number, call] : changing_calls()) {
        filter.push_back({BPF_JMP | BPF_JEQ | BPF_K, 0, 1, static_cast<unsigned>(number)});
        filter.push_back({BPF_RET | BPF_K, 0, 0, SECCOMP_RET_TRACE});
    }
    filter.push_back({BPF_RET | BPF_K, 0, 0, SECCOMP_RET_ALLOW});
    const sock_fprog program{static_cast<unsigned short>(filter.size()), filter.data()};
    return ::prctl(PR_SET_NO_NEW_PRIVS, 1, 0, 0, 0) == 0 &&
           ::prctl(PR_SET_SECCOMP, SECCOMP_MODE_FILTER, &program) == 0;
}

} // namespace

void become(const std::vector<std::string>& command, const std::filesystem::path& folder) {
    std::vector<char*> arguments;
    for (const auto& word : command) {
        arguments.push_back(const_cast<char*>(word.c_str()));
    }
    arguments.push_back(nullptr);
    const int nowhere = ::open("/dev/null", O_RDWR);
    ::dup2(nowhere, STDOUT_FILENO);
    ::dup2(nowhere, STDERR_FILENO);
    if (::chdir(folder.c_str()) == 0) {
        ::execv(arguments.front(), arguments.data());
    }
    ::_exit(127);
}

namespace {

/// Starts a program that stands still until it is let go on.
pid_t start_traced(const std::vector<std::string>& command, const std::filesystem::path& folder) {
    const pid_t child = ::fork();
    if (child == 0) {
        if (::ptrace(PTRACE_TRACEME, 0, nullptr, nullptr) != 0) {
            ::_exit(127);
        }
        // LeakSanitizer traces the program itself, and a program has one tracer only.
        ::setenv("ASAN_OPTIONS", "detect_leaks=0", 1);
        ::raise(SIGSTOP);
        if (!stop_before_changes()) {
            ::_exit(127);
        }
        become(command, folder);
    }
    int state = 0;
    if (::waitpid(child, &state, 0) != child || !WIFSTOPPED(state)) {
        throw std::runtime_error{"this system lets no program be traced"};
    }
    ::ptrace(PTRACE_SETOPTIONS, child, nullptr, PTRACE_O_TRACESECCOMP | PTRACE_O_EXITKILL);
    return child;
}

/// Lets it go on from step to step as long as `before_step` wants it to.
/// \returns its exit status; nothing where it was killed because `before_step` said no
template <class BeforeStep>
std::optional<int> follow(pid_t child, BeforeStep before_step) {
    int state = 0;
    int signal = 0;
    while (go_on(child, signal, state)) {
        signal = WSTOPSIG(state) == SIGTRAP ? 0 : WSTOPSIG(state);
        Step step;
        if (state >> 8 != (SIGTRAP | (PTRACE_EVENT_SECCOMP << 8)) || !read_step(child, step)) {
            continue;
        }
        if (!before_step(std::move(step))) {
            ::kill(child, SIGKILL);
            ::waitpid(child, &state, 0);
            return std::nullopt;
        }
    }
    return WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
}

} // namespace

TracedRun run_traced(const std::vector<std::string>& command, const std::filesystem::path& folder,
                     std::size_t kill_before) {
    TracedRun run;
    const auto status = follow(start_traced(command, folder), [&](Step step) {
        if (run.steps.size() == kill_before) {
            return false;
        }
        run.steps.push_back(std::move(step));
        return true;
    });
    run.was_killed = !status;
    run.status = status.value_or(0);
    return run;
}

std::optional<int> run_interrupted(const std::vector<std::string>& command,
                                   const std::filesystem::path& folder,
                                   const std::function<bool(const Step&)>& is_moment,
                                   const std::function<void()>& meanwhile) {
    bool happened = false;
    const auto status = follow(start_traced(command, folder), [&](const Step& step) {
        if (!happened && is_moment(step)) {
            happened = true;
            meanwhile();
        }
        return true;
    });
    return happened ? status : std::nullopt;
}

bool can_trace() {
    try {
        return run_traced({"/bin/true"}, "/").status == 0;
    } catch (const std::runtime_error&) {
        return false;
    }
}

} // namespace thawslip::test_support

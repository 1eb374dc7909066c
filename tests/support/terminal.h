#pragma once

#include "support/command.h"

#include <algorithm>
#include <array>
#include <cstdlib>
#include <fcntl.h>
#include <stdexcept>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <termios.h>
#include <unistd.h>

namespace thawslip::test_support {

/// A terminal without a screen: what is written to one end is read at the other (pty(7), Linux).
class Terminal {
public:
    Terminal() : hand_{::posix_openpt(O_RDWR | O_NOCTTY | O_CLOEXEC)} {
        if (hand_ < 0 || ::grantpt(hand_) != 0 || ::unlockpt(hand_) != 0) {
            throw std::runtime_error{"no terminal can be made"};
        }
        end_ = ::open(::ptsname(hand_), O_RDWR | O_NOCTTY | O_CLOEXEC);
        if (end_ < 0) {
            throw std::runtime_error{"no terminal can be opened"};
        }
    }
    Terminal(const Terminal&) = delete;
    Terminal& operator=(const Terminal&) = delete;
    ~Terminal() {
        ::close(end_);
        ::close(hand_);
    }

    int end() const { return end_; }   ///< where a program is
    int hand() const { return hand_; } ///< where somebody types and looks

    void type(std::string_view text) const {
        if (::write(hand_, text.data(), text.size()) != static_cast<ssize_t>(text.size())) {
            throw std::runtime_error{"the terminal takes no more"};
        }
    }

private:
    int hand_;
    int end_ = -1;
};

/// Whether this system gives terminals: a bare chroot has no /dev/pts.
inline bool has_terminals() {
    try {
        const Terminal terminal;
        return true;
    } catch (const std::runtime_error&) {
        return false;
    }
}

/// What a terminal showed, and how the program ended.
struct AtTerminal {
    int status = 0;
    std::string screen; ///< what was typed too, as a terminal shows it; lines end as "\n"
};

/// Runs a shell command whose three streams are a terminal, at which `typed` is typed at once, and
/// then that there is no more (termios(3), VEOF).
inline AtTerminal run_at_terminal(const std::string& command, const std::string& typed) {
    const Terminal terminal;
    terminal.type(typed + "\x04");
    const pid_t child = ::fork();
    if (child == 0) {
        ::setsid();
        for (const int stream : {STDIN_FILENO, STDOUT_FILENO, STDERR_FILENO}) {
            ::dup2(terminal.end(), stream);
        }
        ::execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
        ::_exit(127);
    }
    AtTerminal seen;
    int state = 0;
    std::array<char, 4096> block{};
    ::fcntl(terminal.hand(), F_SETFL, O_NONBLOCK);
    const auto look = [&] {
        for (ssize_t size = 0; (size = ::read(terminal.hand(), block.data(), block.size())) > 0;) {
            seen.screen.append(block.data(), static_cast<std::size_t>(size));
        }
    };
    while (::waitpid(child, &state, WNOHANG) == 0) {
        look();
        ::usleep(1000);
    }
    look();
    std::erase(seen.screen, '\r');
    seen.status = WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
    return seen;
}

} // namespace thawslip::test_support

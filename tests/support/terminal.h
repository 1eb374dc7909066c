#pragma once

#include "support/skip.h"

#include <array>
#include <fcntl.h>
#include <pty.h>
#include <stdexcept>
#include <string>
#include <string_view>
#include <sys/wait.h>
#include <unistd.h>

namespace thawslip::test_support {

/// A terminal without a screen: what is written to one end is read at the other (pty(7), Linux).
class Terminal {
public:
    Terminal() {
        if (::openpty(&hand_, &end_, nullptr, nullptr, nullptr) != 0) {
            throw std::runtime_error{"no terminal can be made"};
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

private:
    int hand_ = -1;
    int end_ = -1;
};

/// Whether this system gives terminals, which a bare chroot does not; says the skip where it does
/// not.
inline bool has_terminals() {
    try {
        const Terminal terminal;
        return true;
    } catch (const std::runtime_error&) {
        skip("this system gives no terminals (/dev/pts)");
        return false;
    }
}

/// All that is there to be read without waiting. Has the descriptor never wait again.
inline std::string read_at_once(int descriptor) {
    ::fcntl(descriptor, F_SETFL, O_NONBLOCK);
    std::string text;
    std::array<char, 4096> block{};
    for (ssize_t size = 0; (size = ::read(descriptor, block.data(), block.size())) > 0;) {
        text.append(block.data(), static_cast<std::size_t>(size));
    }
    return text;
}

/// What a terminal showed, and how the program ended.
struct AtTerminal {
    int status = 0;
    std::string screen; ///< what was typed too, as a terminal shows it; lines end as "\n"
};

/// Runs a shell command whose three streams are a terminal, at which `typed` is typed at once, and
/// then that there is no more (termios(3), VEOF).
inline AtTerminal run_at_terminal(const std::string& command, const std::string& typed) {
    int hand = -1;
    const pid_t child = ::forkpty(&hand, nullptr, nullptr, nullptr);
    if (child == 0) {
        ::execl("/bin/sh", "sh", "-c", command.c_str(), nullptr);
        ::_exit(127);
    }
    const auto all = typed + "\x04";
    if (child < 0 || ::write(hand, all.data(), all.size()) != static_cast<ssize_t>(all.size())) {
        throw std::runtime_error{"nothing can be typed at a terminal"};
    }
    AtTerminal seen;
    int state = 0;
    while (::waitpid(child, &state, WNOHANG) == 0) {
        seen.screen += read_at_once(hand);
        ::usleep(1000);
    }
    seen.screen += read_at_once(hand);
    ::close(hand);
    std::erase(seen.screen, '\r');
    seen.status = WIFEXITED(state) ? WEXITSTATUS(state) : 128 + WTERMSIG(state);
    return seen;
}

} // namespace thawslip::test_support

#pragma once

#include <chrono>
#include <csignal>
#include <functional>

namespace thawslip::app {

/// Why the desk ended.
enum class End { Signal, Terminal, Idle };

/// Waits for what ends the desk. Made before any thread is: signals that ask a program to end
/// (SIGINT, SIGTERM, SIGHUP) are held from then on for whoever waits, but for those that were
/// ignored when it was started, as nohup(1) has it.
class Waiting {
public:
    Waiting();

    /// Until one of those signals comes, the terminal that was there at the beginning is gone, or
    /// nobody has asked anything for `idle`.
    /// \param last_request since when nobody has \param each_second is called about so often
    End wait(std::chrono::milliseconds idle,
             const std::function<std::chrono::steady_clock::time_point()>& last_request,
             const std::function<void()>& each_second) const;

private:
    sigset_t signals_;
    bool had_terminal_;
};

} // namespace thawslip::app

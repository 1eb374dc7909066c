#pragma once

namespace thawslip::app {

/// Ends the program with ExitStatus::Refused and a word on standard error when it has used so much
/// of the processor's time before this goes out of scope. For work that other libraries do on what
/// strangers send, and that cannot be interrupted in any other way. One at a time.
class TimeLimit {
public:
    explicit TimeLimit(int seconds);
    TimeLimit(const TimeLimit&) = delete;
    TimeLimit& operator=(const TimeLimit&) = delete;
    ~TimeLimit();
};

} // namespace thawslip::app

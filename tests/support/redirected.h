#pragma once

#include <unistd.h>

namespace thawslip::test_support {

/// A stream of this process leads somewhere else as long as this lives.
class Redirected {
public:
    /// \param stream STDERR_FILENO, say \param to an open descriptor, which stays open
    Redirected(int stream, int to) : stream_{stream}, before_{::dup(stream)} { ::dup2(to, stream); }
    Redirected(const Redirected&) = delete;
    Redirected& operator=(const Redirected&) = delete;
    ~Redirected() {
        ::dup2(before_, stream_);
        ::close(before_);
    }

private:
    int stream_;
    int before_;
};

} // namespace thawslip::test_support

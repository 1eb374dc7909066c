#pragma once

#include "http/limits.h"

#include <condition_variable>
#include <map>
#include <mutex>
#include <string>

namespace thawslip::http {

/// The answers of a server that go on, counted by whose they are: each holds a connection and a
/// thread, so neither many windows of one browser nor many devices may take the places of those who
/// ask. All functions may be called from several threads.
class Streams {
public:
    explicit Streams(const Limits& limits)
        : most_{limits.streams}, most_of_one_{limits.streams_of_one} {}

    /// \param key whose it is \returns whether one more may be open, which then counts
    bool opened(const std::string& key);
    void closed(const std::string& key);

    bool are_open() const;
    /// Whether all of them are to end.
    bool are_over() const;
    /// Has all of them end, and waits a little for it, so that each is ended as the protocol wants.
    void end();

private:
    const std::size_t most_;
    const std::size_t most_of_one_;
    mutable std::mutex mutex_;
    std::condition_variable left_;
    std::map<std::string, std::size_t> of_one_;
    std::size_t count_ = 0;
    bool over_ = false;
};

} // namespace thawslip::http

#pragma once

#include "http/limits.h"

#include <chrono>
#include <condition_variable>
#include <map>
#include <mutex>
#include <optional>
#include <thread>

namespace thawslip::http {

/// What a connection is at, in the order in which they give way where all places are taken.
enum class At {
    Idle,    ///< answered, and nothing new has been asked for
    Head,    ///< its request's first part comes in
    Refused, ///< what is still to come is read over
    Body,
    Sending,   ///< the answer goes out, or a piece of one that goes on
    Streaming, ///< nothing is to be sent now in an answer that goes on; never gives way
    Answering, ///< we are at it; never gives way
};

/// Every open connection of a server, and until when it must have come further. Who is late is shut
/// down, so that neither silence nor a byte a second holds a place. Where one comes and all places
/// are taken, the one that has kept us waiting longest gives way: a request that comes whole gets
/// its answer, however many others dribble. Runs a thread of its own.
class Watch {
public:
    using Clock = std::chrono::steady_clock;
    using Id = const void*;

    explicit Watch(const Limits& limits);
    Watch(const Watch&) = delete;
    Watch& operator=(const Watch&) = delete;
    ~Watch();

    /// A connection at its first head.
    void opened(Id connection, int socket);
    /// \pre its socket is still open: from here on it is not touched
    void closed(Id connection);
    /// Where it was there already, its time goes on.
    void is_at(Id connection, At at);

    /// Whether this is one of the connections that have a place. One that came when all others were
    /// being answered has none.
    bool has_place(Id connection) const;

private:
    struct Connection {
        int socket = -1;
        At at = At::Head;
        Clock::time_point since = {};
        bool is_cut = false;
        bool is_spare = false; ///< it came when nobody could give way
    };

    void run();
    static void cut(Connection& connection);
    void cut_late(Clock::time_point now);
    bool make_way_for(Id newcomer);
    std::optional<Clock::time_point> next_deadline() const;
    std::optional<Clock::time_point> deadline_of(const Connection& connection) const;
    std::size_t count() const; ///< of those that are not cut

    const Limits limits_;
    mutable std::mutex mutex_;
    std::condition_variable changed_;
    std::map<Id, Connection> connections_;
    bool ends_ = false;
    std::thread thread_;
};

} // namespace thawslip::http

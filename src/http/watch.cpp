#include "http/watch.h"

#include <algorithm>
#include <sys/socket.h>
#include <tuple>

namespace thawslip::http {

Watch::Watch(const Limits& limits) : limits_{limits}, thread_{[this] { run(); }} {}

Watch::~Watch() {
    {
        const std::lock_guard lock{mutex_};
        ends_ = true;
    }
    changed_.notify_one();
    thread_.join();
}

void Watch::opened(Id connection, int socket) {
    {
        const std::lock_guard lock{mutex_};
        auto& newcomer = connections_[connection];
        newcomer = {socket, At::Head, Clock::now(), false, false};
        newcomer.is_spare = count() > limits_.connections && !make_way_for(connection);
    }
    changed_.notify_one();
}

void Watch::closed(Id connection) {
    const std::lock_guard lock{mutex_};
    connections_.erase(connection);
}

void Watch::is_at(Id connection, At at) {
    {
        const std::lock_guard lock{mutex_};
        const auto found = connections_.find(connection);
        if (found == connections_.end() || found->second.at == at) {
            return;
        }
        found->second.at = at;
        found->second.since = Clock::now();
    }
    changed_.notify_one();
}

bool Watch::has_place(Id connection) const {
    const std::lock_guard lock{mutex_};
    const auto found = connections_.find(connection);
    return found != connections_.end() &&
           (!found->second.is_spare || count() <= limits_.connections);
}

std::size_t Watch::count() const {
    return static_cast<std::size_t>(
        std::count_if(connections_.begin(), connections_.end(),
                      [](const auto& it) { return !it.second.is_cut; }));
}

/// \returns nothing while it is we who are waited for
std::optional<Watch::Clock::time_point> Watch::deadline_of(const Connection& connection) const {
    switch (connection.at) {
    case At::Idle: return connection.since + limits_.idle;
    case At::Head: return connection.since + limits_.headers_in;
    case At::Refused:
    case At::Body: return connection.since + limits_.body_in;
    case At::Sending: return connection.since + limits_.answer_out;
    case At::Streaming:
    case At::Answering: break;
    }
    return std::nullopt;
}

std::optional<Watch::Clock::time_point> Watch::next_deadline() const {
    std::optional<Clock::time_point> next;
    for (const auto& [id, connection] : connections_) {
        const auto deadline = deadline_of(connection);
        if (deadline && !connection.is_cut) {
            next = next ? std::min(*next, *deadline) : *deadline;
        }
    }
    return next;
}

/// Who serves the connection then reads its end, and closes it.
void Watch::cut(Connection& connection) {
    connection.is_cut = true;
    ::shutdown(connection.socket, SHUT_RDWR);
}

void Watch::cut_late(Clock::time_point now) {
    for (auto& [id, connection] : connections_) {
        const auto deadline = deadline_of(connection);
        if (deadline && *deadline <= now && !connection.is_cut) {
            cut(connection);
        }
    }
}

bool Watch::make_way_for(Id newcomer) {
    Connection* first = nullptr;
    for (auto& [id, connection] : connections_) {
        const bool may_go = id != newcomer && !connection.is_cut && connection.at < At::Streaming;
        if (may_go && (first == nullptr || std::tie(connection.at, connection.since) <
                                               std::tie(first->at, first->since))) {
            first = &connection;
        }
    }
    if (first != nullptr) {
        cut(*first);
    }
    return first != nullptr;
}

void Watch::run() {
    std::unique_lock lock{mutex_};
    while (!ends_) {
        cut_late(Clock::now());
        if (const auto next = next_deadline()) {
            changed_.wait_until(lock, *next);
        } else {
            changed_.wait(lock);
        }
    }
}

} // namespace thawslip::http

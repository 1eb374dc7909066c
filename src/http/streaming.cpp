#include "http/streaming.h"

#include <netinet/in.h>
#include <netinet/tcp.h>
#include <poll.h>
#include <sys/socket.h>
#include <utility>

namespace thawslip::http {
namespace {

/// How often who waits for a piece looks whether it still should.
constexpr std::chrono::milliseconds between_looks{200};

/// Whether the client has closed its side, or the connection is lost.
bool has_gone(int socket) {
    pollfd one{socket, POLLRDHUP, 0};
    return ::poll(&one, 1, 0) > 0;
}

/// RFC 5482 (2009), TCP User Timeout Option: a phone that was carried out of the house says nothing
/// of it, and its system would be waited for much longer.
void end_where_nobody_hears(int socket, std::chrono::milliseconds patience) {
    const auto timeout = static_cast<unsigned>(patience.count());
    ::setsockopt(socket, IPPROTO_TCP, TCP_USER_TIMEOUT, &timeout, sizeof timeout);
}

} // namespace

Streaming::Streaming(Client client, NextPiece next, Streams& streams, const KeyTest& is_right,
                     const Limits& limits)
    : client_{std::move(client)}, next_{std::move(next)}, streams_{streams}, is_right_{is_right} {
    end_where_nobody_hears(client_.socket, limits.heard_of);
}

Streaming::~Streaming() {
    streams_.closed(client_.key);
}

bool Streaming::is_over() const {
    return streams_.are_over() || has_gone(client_.socket) ||
           (is_right_ && !is_right_(client_.key));
}

std::size_t Streaming::read(char* buffer, std::size_t size) {
    while (left_.empty()) {
        left_ = next_(between_looks);
        if (is_over()) { // what has come just now is for it no longer
            return 0;
        }
    }
    const auto length = left_.copy(buffer, size);
    left_.erase(0, length);
    return length;
}

} // namespace thawslip::http

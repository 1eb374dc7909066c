#include "http/listen.h"

#include <arpa/inet.h>
#include <cerrno>
#include <cstring>
#include <fmt/format.h>
#include <netinet/in.h>
#include <optional>
#include <sys/socket.h>
#include <unistd.h>
#include <utility>

namespace thawslip::http {
namespace {

constexpr int backlog = 512; // a client whose knock is dropped waits a second before the next

std::optional<sockaddr_in> address_of(const Place& place) {
    sockaddr_in address = {};
    address.sin_family = AF_INET;
    address.sin_port = htons(static_cast<std::uint16_t>(place.port));
    const bool is_one = inet_pton(AF_INET, place.address.c_str(), &address.sin_addr) == 1;
    const bool is_port = place.port >= 0 && place.port <= 65535;
    return is_one && is_port ? std::optional{address} : std::nullopt;
}

std::string why_not(const Place& place, int error) {
    switch (error) {
    case EADDRINUSE:
        return fmt::format("port {} of {} is taken by another program", place.port, place.address);
    case EADDRNOTAVAIL: return fmt::format("{} is no address of this computer", place.address);
    case EACCES: return fmt::format("port {} is the system's; take one from 1024 on", place.port);
    default: return fmt::format("cannot listen at {}: {}", place.address, std::strerror(error));
    }
}

bool listens(int socket, const sockaddr_in& address) {
    const int yes = 1; // a port that was ours a moment ago may be taken again
    ::setsockopt(socket, SOL_SOCKET, SO_REUSEADDR, &yes, sizeof yes);
    return ::bind(socket, reinterpret_cast<const sockaddr*>(&address), sizeof address) == 0 &&
           ::listen(socket, backlog) == 0;
}

int port_of(int socket) {
    sockaddr_in address = {};
    socklen_t size = sizeof address;
    ::getsockname(socket, reinterpret_cast<sockaddr*>(&address), &size);
    return ntohs(address.sin_port);
}

} // namespace

Result<Listening, std::string> Listening::open(const Place& place) {
    const auto address = address_of(place);
    if (!address) {
        return Failure{
            fmt::format("{}:{} is no place to listen at, expected such as 127.0.0.1:8123",
                        place.address, place.port)};
    }
    // No program that is started by this one has it.
    Listening listening{::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0), 0};
    if (listening.socket_ < 0 || !listens(listening.socket_, *address)) {
        return Failure{why_not(place, errno)};
    }
    listening.port_ = port_of(listening.socket_);
    return listening;
}

Listening::Listening(Listening&& other) noexcept
    : socket_{std::exchange(other.socket_, -1)}, port_{other.port_} {}

Listening::~Listening() {
    if (socket_ >= 0) {
        ::close(socket_);
    }
}

int Listening::take() {
    return std::exchange(socket_, -1);
}

} // namespace thawslip::http

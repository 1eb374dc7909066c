#pragma once

#include "base/result.h"

#include <string>

namespace thawslip::http {

/// Where a server listens.
struct Place {
    std::string address = "127.0.0.1"; ///< IPv4
    int port = 0;                      ///< 0: any that is free
};

/// A socket that listens, closed with the object unless it was taken.
class Listening {
public:
    /// \returns it, or in words why not
    static Result<Listening, std::string> open(const Place& place);
    Listening(Listening&& other) noexcept;
    Listening& operator=(Listening&&) = delete;
    Listening(const Listening&) = delete;
    ~Listening();

    int port() const { return port_; }
    int take(); ///< the socket, which is the caller's from here on
    int socket() const { return socket_; }

private:
    Listening(int socket, int port) : socket_{socket}, port_{port} {}
    int socket_ = -1;
    int port_ = 0;
};

} // namespace thawslip::http

#pragma once

#include "base/result.h"
#include "http/message.h"

#include <chrono>
#include <cstddef>
#include <functional>
#include <memory>
#include <string>

namespace thawslip::http {

/// What is taken from a client at most. Whoever asks for more is answered, and the connection ends.
struct Limits {
    std::size_t url = 2U << 10U;
    std::size_t headers = 32U << 10U; ///< all of them together
    std::size_t body = 8U << 20U;     ///< of any request; `body_limit` may say less of its path
    unsigned connections = 32;
    std::chrono::seconds headers_in{5}; ///< from the connection's beginning, however it dribbles
    std::chrono::seconds body_in{30};
};

/// Where and how a server listens.
struct Place {
    std::string address = "127.0.0.1";
    int port = 0; ///< 0: any that is free
};

/// Answers a request. Called from several threads at once.
using Answer = std::function<Response(const Request&)>;
/// How many bytes the body of a request may have, by its path.
using BodyLimit = std::function<std::size_t(const std::string& path)>;

/// An HTTP/1.1 server that runs until it is destroyed. An exception of `answer` is an answer 500
/// without its words, and the server lives.
class Server {
public:
    /// \returns the server, or why it cannot listen there, in words
    static Result<std::unique_ptr<Server>, std::string>
    start(const Place& place, Answer answer, BodyLimit body_limit, const Limits& limits = {});
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    ~Server();

    int port() const;
    /// Since when nobody has asked for anything.
    std::chrono::steady_clock::time_point last_request() const;

private:
    struct Running;
    explicit Server(std::unique_ptr<Running> running);
    std::unique_ptr<Running> running_;
};

} // namespace thawslip::http

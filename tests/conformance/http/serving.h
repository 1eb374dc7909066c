#pragma once

#include "http/server.h"
#include "support/http_client.h"

#include <fmt/format.h>
#include <stdexcept>
#include <utility>

namespace thawslip::test_support {

/// The server's limits, with times that no test waits out.
inline http::Limits patient() {
    http::Limits limits;
    limits.headers_in = limits.body_in = limits.answer_out = limits.idle = std::chrono::hours{1};
    return limits;
}

inline const std::string key = "a-key-of-this-run";

/// What a test's server answers: what it was asked, in words.
inline http::Response echo(const http::Request& request) {
    if (request.path == "/throws") {
        throw std::runtime_error{"nobody is to read this"};
    }
    return {200, "text/plain", request.path + "|" + request.body, {}};
}

/// A server on this computer, at any port.
class Serving {
public:
    explicit Serving(const http::Limits& limits = patient(), http::Answer answer = echo,
                     std::size_t body_limit = 64U << 10U) {
        auto started = http::Server::start(
            {}, {{}, http::one_key(key), {"/api/key"}}, std::move(answer),
            [body_limit](const std::string&) { return body_limit; }, limits);
        if (!started) {
            throw std::runtime_error{started.fault()};
        }
        server_ = std::move(started).value();
    }

    int port() const { return server_->port(); }
    const http::Server& server() const { return *server_; }
    std::string host() const { return fmt::format("127.0.0.1:{}", port()); }

    /// A request as our page sends it. \param more headers, a line each with its end
    std::string get(const std::string& path, const std::string& more = {}) const {
        return fmt::format("GET {} HTTP/1.1\r\nHost: {}\r\nThawslip-Key: {}\r\n{}\r\n", path,
                           host(), key, more);
    }
    std::string post_head(const std::string& path, const std::string& more) const {
        return fmt::format("POST {} HTTP/1.1\r\nHost: {}\r\nOrigin: http://{}\r\n"
                           "Thawslip-Key: {}\r\nContent-Type: application/json\r\n{}\r\n",
                           path, host(), host(), key, more);
    }
    std::string post(const std::string& path, const std::string& body) const {
        return post_head(path, fmt::format("Content-Length: {}\r\n", body.size())) + body;
    }

private:
    std::unique_ptr<http::Server> server_;
};

} // namespace thawslip::test_support

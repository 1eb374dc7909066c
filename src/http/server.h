#pragma once

#include "base/result.h"
#include "http/incoming.h"
#include "http/listen.h"

#include <chrono>
#include <functional>
#include <memory>
#include <string>

namespace thawslip::http {

/// Answers a request that the guard has let in. Called from several threads at once.
using Answer = std::function<Response(const Request&)>;

/// An HTTP/1.1 server that runs until it is destroyed, which waits for answers that are being made,
/// and ends those that go on. One of those ends also when its key is worth nothing any longer.
/// Every request passes the guard before any of its body is kept, and every answer says what
/// `guarded` adds. An exception of `answer` is an answer 500 without its words, and the server
/// lives.
class Server {
public:
    /// \param guard its host may be left empty: it is where the server listens
    /// \param pem a key and a certificate (http/certificate.h), where it is to speak TLS 1.2
    /// or 1.3; empty: it does not \returns the server, or why it cannot listen there, in words
    static Result<std::unique_ptr<Server>, std::string> start(const Place& place, Guard guard,
                                                              Answer answer, BodyLimit body_limit,
                                                              const Limits& limits = {},
                                                              const std::string& pem = {});
    Server(const Server&) = delete;
    Server& operator=(const Server&) = delete;
    ~Server();

    int port() const;
    /// Since when nobody has asked for anything that was let in, or listened to an answer that goes
    /// on: now, where somebody does.
    std::chrono::steady_clock::time_point last_request() const;

private:
    struct Running;
    explicit Server(std::unique_ptr<Running> running);
    std::unique_ptr<Running> running_;
};

} // namespace thawslip::http

// For builds without libmicrohttpd.
#include "http/certificate.h"
#include "http/server.h"

namespace thawslip::http {

struct Server::Running {};

Result<std::unique_ptr<Server>, std::string> Server::start(const Place&, Guard, Answer, BodyLimit,
                                                           const Limits&, const std::string&) {
    return Failure{std::string{"this thawslip was built without libmicrohttpd and has no desk"}};
}

Server::Server(std::unique_ptr<Running> running) : running_{std::move(running)} {}

Server::~Server() = default;

int Server::port() const {
    return 0;
}

std::chrono::steady_clock::time_point Server::last_request() const {
    return {};
}

Result<std::string, std::string> make_certificate(const std::string&, std::int64_t) {
    return Failure{std::string{"this thawslip was built without libmicrohttpd and has no desk"}};
}

bool certificate_serves(const std::string&, const std::string&, std::int64_t) {
    return false;
}

std::string fingerprint(const std::string&) {
    return {};
}

} // namespace thawslip::http

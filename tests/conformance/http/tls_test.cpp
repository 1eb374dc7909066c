// Which versions of TLS are spoken: RFC 8996 (2021), Deprecating TLS 1.0 and TLS 1.1. What a client
// begins with: RFC 5246 (2008), sections 6.2.1 and 7.4.1.2; RFC 8422
// (2018), section 5.1.

#include "http/certificate.h"
#include "serving.h"
#include "support/skip.h"

#include <ctime>
#include <doctest/doctest.h>
#include <memory>
#include <string>

using namespace thawslip;
using namespace thawslip::test_support;
using namespace std::string_literals;

namespace {

/// A number in so many bytes, the highest first.
std::string number(std::size_t value, int bytes) {
    std::string text;
    while (bytes-- > 0) {
        text += static_cast<char>(value >> (8 * bytes) & 0xFFU);
    }
    return text;
}

/// What a vector of RFC 5246 (section 4.3) is: its length in so many bytes, then its content.
std::string vector_of(const std::string& content, int bytes) {
    return number(content.size(), bytes) + content;
}

std::string extension(std::size_t type, const std::string& content) {
    return number(type, 2) + vector_of(content, 2);
}

/// A ClientHello that offers no later version than 3.`minor`, with suites for a key of an elliptic
/// curve that this version has.
std::string client_hello(std::size_t minor) {
    const auto version = number(0x0300 + minor, 2);
    const auto suites = number(0xC009, 2) + number(0xC00A, 2) + number(0xC02B, 2);
    const auto extensions =
        extension(10, vector_of(number(23, 2), 2)) +    // supported_groups: secp256r1
        extension(11, vector_of(number(0, 1), 1)) +     // ec_point_formats: uncompressed
        extension(13, vector_of(number(0x0403, 2), 2)); // signature_algorithms: SHA-256, ECDSA
    const auto hello = version + std::string(32, 'r') + vector_of("", 1) + vector_of(suites, 2) +
                       vector_of(number(0, 1), 1) + vector_of(extensions, 2);
    const auto message = number(1, 1) + vector_of(hello, 3);
    return number(22, 1) + version + vector_of(message, 2);
}

/// A server that speaks TLS; nothing where none can be made here, which is said.
std::unique_ptr<http::Server> encrypted() {
    const auto pem = http::make_certificate("127.0.0.1", std::time(nullptr));
    if (!pem) {
        REQUIRE(pem.fault() == "encryption needs GnuTLS, which is not installed here");
        skip(pem.fault());
        return nullptr;
    }
    auto started = http::Server::start(
        {}, {{}, http::one_key(key), {"/api/key"}}, echo,
        [](const std::string&) { return std::size_t{1024}; }, patient(), pem.value());
    REQUIRE(started.ok());
    return std::move(started).value();
}

/// All that is answered to a client that says no more than this.
std::string answer_to(const http::Server& server, const std::string& hello) {
    Client client{server.port()};
    client.send(hello);
    client.end_sending();
    return client.rest();
}

} // namespace

TEST_CASE("TLS 1.2 is spoken, 1.0 and 1.1 are refused (RFC 8996)") {
    const auto server = encrypted();
    if (server == nullptr) {
        return;
    }
    const auto handshake = "\x16\x03\x03"s;
    CHECK(answer_to(*server, client_hello(3)).starts_with(handshake));
    for (const std::size_t minor : {std::size_t{1}, std::size_t{2}}) {
        CAPTURE(minor);
        const auto refused = answer_to(*server, client_hello(minor));
        CHECK((refused.empty() || refused.front() == '\x15')); // hung up on, or an alert
    }
}

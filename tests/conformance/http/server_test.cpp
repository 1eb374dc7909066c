// The server over real sockets: what RFC 9112 has requests look like, and what clients do to it.

#include "serving.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("a request is answered, and the next on the same connection (RFC 9112, section 9.3)") {
    const Serving serving;
    Client client{serving.port()};
    for (const auto* path : {"/first", "/second"}) {
        client.send(serving.get(path));
        const auto reply = client.reply();
        REQUIRE(reply);
        CHECK(reply->status == 200);
        CHECK(reply->body == std::string{path} + "|");
        CHECK(reply->headers.at("content-type") == "text/plain");
        CHECK(reply->headers.at("cache-control") == "no-store");
        CHECK(reply->headers.contains("content-security-policy"));
    }
}

TEST_CASE("a body comes whole, in however many pieces") {
    const Serving serving;
    Client client{serving.port()};
    const std::string body(40'000, 'b');
    const auto request = serving.post("/api/x", body);
    for (std::size_t at = 0; at < request.size(); at += 7'001) {
        client.send(request.substr(at, 7'001));
    }
    CHECK(client.reply()->body == "/api/x|" + body);
}

TEST_CASE("what the guard refuses is refused here") {
    const Serving serving;
    const auto wrong_host = ask(serving.port(), "GET / HTTP/1.1\r\nHost: orchard.test\r\n\r\n");
    CHECK(wrong_host->status == 421);
    const auto no_key =
        ask(serving.port(), "GET /api/state HTTP/1.1\r\nHost: " + serving.host() + "\r\n\r\n");
    CHECK(no_key->status == 401);
    CHECK(no_key->headers.contains("content-security-policy"));
}

// The server over real sockets, asked as RFC 9112 (2022), HTTP/1.1, and RFC 9110 (2022), HTTP
// Semantics, say that clients ask.

#include "serving.h"

#include <doctest/doctest.h>
#include <thread>
#include <vector>

using namespace thawslip;
using namespace thawslip::test_support;

TEST_CASE("a request is answered, and the next on the same connection (RFC 9112, 9.3)") {
    const Serving serving;
    Client client{serving.port()};
    for (const std::string path : {"/first", "/second"}) {
        client.send(serving.get(path));
        const auto reply = client.reply();
        REQUIRE(reply);
        CHECK(reply->status == 200);
        CHECK(reply->body == path + "|");
        CHECK(reply->headers.at("content-type") == "text/plain");
        CHECK(reply->headers.at("cache-control") == "no-store");
        CHECK(reply->headers.contains("content-security-policy"));
    }
}

TEST_CASE("requests sent at once are answered in their order (RFC 9112, 9.3.2)") {
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.get("/1") + serving.post("/api/2", "two") + serving.get("/3"));
    CHECK(client.reply()->body == "/1|");
    CHECK(client.reply()->body == "/api/2|two");
    CHECK(client.reply()->body == "/3|");
}

TEST_CASE("a connection that is to be closed is, behind the answer (RFC 9112, 9.6)") {
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.get("/1", "Connection: close\r\n") + serving.get("/2"));
    CHECK(client.reply()->body == "/1|");
    CHECK(client.rest().empty());
}

TEST_CASE("HTTP/1.0 is answered, and the connection closed (RFC 9112, 9.3)") {
    const Serving serving;
    Client client{serving.port()};
    client.send("GET /old HTTP/1.0\r\nHost: " + serving.host() + "\r\n\r\n");
    CHECK(client.reply()->body == "/old|");
    CHECK(client.rest().empty());
    CHECK(ask(serving.port(), "GET / HTTP/1.0\r\n\r\n")->status == 421); // it names no host
}

TEST_CASE("HTTP/1.1 without a host is refused (RFC 9112, 3.2)") {
    const Serving serving;
    CHECK(ask(serving.port(), "GET / HTTP/1.1\r\n\r\n")->status == 400);
    CHECK(ask(serving.port(), "GET / HTTP/1.1\r\nHost: " + serving.host() +
                                  "\r\nHost: " + serving.host() + "\r\n\r\n")
              ->status == 400);
}

TEST_CASE("HEAD has an answer's headers without its body (RFC 9110, 9.3.2)") {
    const Serving serving;
    Client client{serving.port()};
    client.send("HEAD /four HTTP/1.1\r\nHost: " + serving.host() + "\r\n\r\n" + serving.get("/"));
    const auto reply = client.reply(Client::Body::Never);
    CHECK(reply->status == 200);
    CHECK(reply->headers.at("content-length") == "6"); // "/four|"
    CHECK(client.reply()->body == "/|");
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

TEST_CASE("a body has any bytes, or none") {
    const Serving serving;
    Client client{serving.port()};
    std::string bytes;
    for (int byte = 0; byte < 256; ++byte) {
        bytes += static_cast<char>(byte);
    }
    client.send(serving.post("/api/x", bytes));
    CHECK(client.reply()->body == "/api/x|" + bytes);
    client.send(serving.post("/api/x", ""));
    CHECK(client.reply()->body == "/api/x|");
}

TEST_CASE("a body in chunks is put together (RFC 9112, 7.1)") {
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.post_head("/api/x", "Transfer-Encoding: chunked\r\n") +
                "5\r\napple\r\n1;kept=no\r\n \r\nA\r\nand quince\r\n0\r\nThawslip-Key: x\r\n\r\n");
    CHECK(client.reply()->body == "/api/x|apple and quince");
    client.send(serving.get("/next"));
    CHECK(client.reply()->body == "/next|");
}

TEST_CASE("who asks before it sends a body is answered (RFC 9110, 10.1.1)") {
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.post_head("/api/x", "Content-Length: 5\r\nExpect: 100-continue\r\n"));
    CHECK(client.reply()->status == 100);
    client.send("apple");
    CHECK(client.reply()->body == "/api/x|apple");
}

TEST_CASE("who has sent a request and half closes is answered (RFC 9112, 9.6)") {
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.post("/api/x", "apple"));
    client.end_sending();
    CHECK(client.reply()->body == "/api/x|apple");
    CHECK(client.rest().empty());
}

TEST_CASE("the absolute form is answered, by its own host (RFC 9112, 3.2.2)") {
    const Serving serving;
    const auto host_line = " HTTP/1.1\r\nHost: " + serving.host() + "\r\n\r\n";
    CHECK(ask(serving.port(), "GET http://" + serving.host() + "/x" + host_line)->body == "/x|");
    CHECK(ask(serving.port(), "GET http://orchard.test/x" + host_line)->status == 421);
}

TEST_CASE("what the guard refuses is refused here, before its body is kept") {
    const Serving serving;
    const auto wrong_host = ask(serving.port(), "GET / HTTP/1.1\r\nHost: orchard.test\r\n\r\n");
    CHECK(wrong_host->status == 421);
    const auto no_key =
        ask(serving.port(), "GET /api/state HTTP/1.1\r\nHost: " + serving.host() + "\r\n\r\n");
    CHECK(no_key->status == 401);
    CHECK(no_key->headers.contains("content-security-policy"));
    CHECK(no_key->headers.at("content-type") == "application/json");
    for (const std::string method : {"OPTIONS", "TRACE", "DELETE", "PATCH", "CONNECT", "BREW"}) {
        CAPTURE(method);
        const auto refused =
            ask(serving.port(), method + " / HTTP/1.1\r\nHost: " + serving.host() + "\r\n\r\n");
        CHECK(refused->status == 405);
        CHECK(refused->headers.at("allow") == "GET, HEAD, POST, PUT");
    }
}

TEST_CASE("a preflight gets nothing that would let another site in (Fetch, 3.2.2)") {
    const Serving serving;
    const auto reply =
        ask(serving.port(), "OPTIONS /api/state HTTP/1.1\r\nHost: " + serving.host() +
                                "\r\nOrigin: http://orchard.test\r\n"
                                "Access-Control-Request-Method: POST\r\n\r\n");
    CHECK(reply->status == 405);
    for (const auto& [name, value] : reply->headers) {
        CHECK_FALSE(name.starts_with("access-control-"));
    }
}

TEST_CASE("an exception is an answer without its words, and the server lives") {
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.get("/throws"));
    const auto reply = client.reply();
    CHECK(reply->status == 500);
    CHECK(reply->body.find("nobody is to read this") == std::string::npos);
    CHECK(reply->headers.contains("content-security-policy"));
    client.send(serving.get("/next"));
    CHECK(client.reply()->body == "/next|");
}

TEST_CASE("what is thrown and is no exception of the standard's is an answer too") {
    const Serving serving{patient(), [](const http::Request&) -> http::Response { throw 7; }};
    CHECK(ask(serving.port(), serving.get("/"))->status == 500);
}

TEST_CASE("an answer without a body has none (RFC 9110, 15.4.5)") {
    const Serving serving{patient(), [](const http::Request&) {
                              return http::Response{304, "text/css", {}, {{"ETag", "\"1\""}}};
                          }};
    Client client{serving.port()};
    client.send(serving.get("/1") + serving.get("/2"));
    for (int times = 0; times < 2; ++times) {
        const auto reply = client.reply();
        CHECK(reply->status == 304);
        CHECK(reply->headers.at("etag") == "\"1\"");
        CHECK(reply->headers.at("cache-control") == "no-cache");
    }
}

TEST_CASE("a header with a line end in it makes no second header (RFC 9110, 5.5)") {
    const Serving serving{
        patient(), [](const http::Request&) {
            return http::Response{200, "text/plain", {}, {{"X", "1\r\nSet-Cookie: a=b"}}};
        }};
    Client client{serving.port()};
    client.send(serving.get("/"));
    CHECK(client.rest().find("Set-Cookie") == std::string::npos);
}

TEST_CASE("many ask at once, and each gets its own answer") {
    const Serving serving;
    std::vector<std::thread> clients;
    std::atomic<int> right = 0;
    for (int number = 0; number < 8; ++number) {
        clients.emplace_back([&, number] {
            Client client{serving.port()};
            for (int times = 0; times < 50; ++times) {
                const auto body = fmt::format("{} of {}", times, number);
                client.send(serving.post("/api/x", body));
                const auto reply = client.reply();
                right += reply && reply->body == "/api/x|" + body ? 1 : 0;
            }
        });
    }
    for (auto& client : clients) {
        client.join();
    }
    CHECK(right == 8 * 50);
}

TEST_CASE("only a request that is let in counts as one") {
    const Serving serving;
    const auto before = serving.server().last_request();
    CHECK(ask(serving.port(), "GET / HTTP/1.1\r\nHost: orchard.test\r\n\r\n")->status == 421);
    CHECK(serving.server().last_request() == before);
    CHECK(ask(serving.port(), serving.get("/"))->status == 200);
    CHECK(serving.server().last_request() > before);
}

TEST_CASE("an answer knows who asks") {
    const Serving serving{patient(), [](const http::Request& request) {
                              return http::Response{200, "text/plain", request.peer, {}};
                          }};
    CHECK(ask(serving.port(), serving.get("/"))->body == "127.0.0.1");
}

TEST_CASE("a server for a house answers nobody from elsewhere, whatever they say of themselves") {
    const auto started =
        http::Server::start({}, {{}, {}, {}, true}, echo, [](const std::string&) { return 0U; });
    REQUIRE(started);
    const auto port = started.value()->port();
    const auto head = fmt::format("GET / HTTP/1.1\r\nHost: 127.0.0.1:{}\r\n", port);
    // This computer itself is not the network (RFC 1122, section 3.2.1.3).
    for (const std::string more :
         {"", "X-Forwarded-For: 192.168.1.31\r\n", "Forwarded: for=192.168.1.31\r\n"}) {
        CAPTURE(more);
        const auto reply = ask(port, head + more + "\r\n");
        CHECK(reply->status == 403);
        // HTML, 7.1.3: only of secure contexts.
        CHECK_FALSE(reply->headers.contains("cross-origin-opener-policy"));
    }
    const Serving own;
    CHECK(ask(own.port(), own.get("/"))->headers.contains("cross-origin-opener-policy"));
}

TEST_CASE("a second server at the same port is told so") {
    const Serving serving;
    const auto second = http::Server::start({"127.0.0.1", serving.port()}, {}, echo,
                                            [](const std::string&) { return std::size_t{0}; });
    REQUIRE_FALSE(second);
    CHECK(second.fault() ==
          fmt::format("port {} of 127.0.0.1 is taken by another program", serving.port()));
}

// Clients that are slow, broken or gone. None says how long something takes: what is waited for
// comes, or the client's patience (support/http_client.h) ends the test.

#include "serving.h"

#include <doctest/doctest.h>
#include <memory>
#include <thread>
#include <vector>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

constexpr std::chrono::milliseconds soon{20};

/// Sends a byte after the other, until the server has hung up.
void dribble(const Client& client) {
    while (client.send("a")) {
        std::this_thread::sleep_for(std::chrono::milliseconds{1});
    }
}

bool answers(const Serving& serving) {
    const auto reply = ask(serving.port(), serving.get("/good"));
    return reply && reply->body == "/good|";
}

} // namespace

TEST_CASE("a good client is answered while seventy hold all places by a byte now and then") {
    const Serving serving; // nobody is late within the hour
    std::vector<Client> slow;
    for (int number = 0; number < 70; ++number) {
        slow.emplace_back(serving.port());
        slow.back().send("GET / HTTP/1.1\r\nX: ");
    }
    for (int second = 0; second < 5; ++second) {
        for (const auto& client : slow) {
            client.send("a"); // those that had to give way are gone, which is what they get
        }
        CHECK(answers(serving));
    }
}

TEST_CASE("so it is while they come back as soon as they are thrown out") {
    const Serving serving;
    std::vector<std::unique_ptr<Client>> slow(70);
    for (int round = 0; round < 5; ++round) {
        for (auto& client : slow) {
            if (!client || !client->send("a")) {
                client = std::make_unique<Client>(serving.port());
                client->send("POST / HTTP/1.1\r\n");
            }
        }
        CHECK(answers(serving));
    }
}

TEST_CASE("so it is while they hold back their bodies, with the key and without") {
    for (const std::string key_line : {"", "Thawslip-Key: other\r\n"}) {
        const Serving serving;
        std::vector<Client> slow;
        for (int number = 0; number < 70; ++number) {
            slow.emplace_back(serving.port());
            slow.back().send(serving.post_head("/api/x", key_line + "Content-Length: 9\r\n") + "a");
        }
        CHECK(answers(serving));
    }
}

TEST_CASE("a head that dribbles is cut off, though it is never silent") {
    auto limits = patient();
    limits.headers_in = soon;
    const Serving serving{limits};
    for (const std::string beginning : {"", "GET /", "GET / HTTP/1.1\r\nX: "}) {
        CAPTURE(beginning);
        const Client client{serving.port()};
        client.send(beginning);
        dribble(client);
    }
}

TEST_CASE("a client that says nothing is cut off") {
    auto limits = patient();
    limits.headers_in = soon;
    const Serving serving{limits};
    Client client{serving.port()};
    CHECK(client.rest().empty());
}

TEST_CASE("a body that dribbles is cut off, kept or read over") {
    auto limits = patient();
    limits.body_in = soon;
    const Serving serving{limits};
    for (const std::string path : {"/api/x", "/%"}) {
        CAPTURE(path);
        const Client client{serving.port()};
        client.send(serving.post_head(path, "Content-Length: 60000\r\n"));
        dribble(client);
    }
}

TEST_CASE("a connection that is kept and not used is closed, and so is one that dribbles on") {
    auto limits = patient();
    limits.idle = soon;
    const Serving serving{limits};
    Client quiet{serving.port()};
    quiet.send(serving.get("/"));
    CHECK(quiet.reply()->status == 200);
    CHECK(quiet.rest().empty());
    Client slow{serving.port()};
    slow.send(serving.get("/"));
    CHECK(slow.reply()->status == 200);
    dribble(slow);
}

TEST_CASE("who hangs up in the middle harms nobody") {
    const Serving serving;
    for (const auto& part :
         {std::string{}, std::string{"G"}, std::string{"GET / HTTP/1.1\r\nHos"},
          serving.post_head("/api/x", "Content-Length: 100\r\n") + "half",
          serving.post_head("/api/x", "Transfer-Encoding: chunked\r\n") + "5\r\nap",
          serving.get("/answered to nobody")}) {
        CAPTURE(part);
        {
            const Client gone{serving.port()};
            gone.send(part);
        }
        Client half{serving.port()};
        half.send(part);
        half.end_sending();
        half.rest();
        CHECK(answers(serving));
    }
}

TEST_CASE("what is no HTTP gets no answer of ours, and the server lives") {
    const Serving serving;
    const auto host = "Host: " + serving.host() + "\r\n";
    for (const auto& bytes :
         {std::string{"\x16\x03\x01\x02\x00\x01\x00\x01\xfc\x03\x03", 11}, // a TLS client's hello
          std::string(64, '\0'), std::string{"\r\n\r\n\r\n\r\n"}, std::string{"GET\r\n\r\n"},
          std::string{"GET /\r\n\r\n"}, "GET / HTTP/1.1 x\r\n" + host + "\r\n",
          "GET / HTTP/2.0\r\n" + host + "\r\n", "GET / HTTP/1.1\r\n" + host + "no colon\r\n\r\n",
          "GET /a b HTTP/1.1\r\n" + host + "\r\n", "GE\x01T / HTTP/1.1\r\n" + host + "\r\n",
          std::string{"GET /a\0b HTTP/1.1\r\n", 20} + host + "\r\n",
          "GET /%00 HTTP/1.1\r\n" + host + "\r\n", "GET /%zz HTTP/1.1\r\n" + host + "\r\n",
          "GET /\xC3\xA9 HTTP/1.1\r\n" + host + "\r\n",
          std::string{"PRI * HTTP/2.0\r\n\r\nSM\r\n\r\n"}}) {
        CAPTURE(bytes);
        Client client{serving.port()};
        client.send(bytes);
        client.end_sending();
        CHECK(client.rest().find("200 OK") == std::string::npos);
        CHECK(answers(serving));
    }
}

TEST_CASE("a header without a name is left out") { // by the library: RFC 9112, 5, would have 400
    const Serving serving;
    Client client{serving.port()};
    client.send(serving.get("/", ": orchard.test\r\n"));
    CHECK(client.reply()->body == "/|");
}

TEST_CASE("a length that is none ends the connection (RFC 9112, 6.3)") {
    const Serving serving;
    for (const std::string length :
         {"-1", "+5", "5x", "0x5", "5, 5", "", "1e1", "5 5", "99999999999999999999999"}) {
        CAPTURE(length);
        Client client{serving.port()};
        client.send(serving.post_head("/api/x", "Content-Length: " + length + "\r\n") + "apple" +
                    serving.get("/smuggled"));
        client.end_sending();
        CHECK(client.rest().find("200 OK") == std::string::npos);
    }
}

TEST_CASE("a chunk that is none ends the connection (RFC 9112, 7.1)") {
    const Serving serving;
    for (const std::string chunk :
         {"x\r\n", "-5\r\napple\r\n", "0x5\r\napple\r\n", "fffffffffffffffff\r\napple\r\n",
          "5\r\napples\r\n0\r\n\r\n", " 5\r\napple\r\n0\r\n\r\n"}) {
        CAPTURE(chunk);
        Client client{serving.port()};
        client.send(serving.post_head("/api/x", "Transfer-Encoding: chunked\r\n") + chunk +
                    serving.get("/smuggled"));
        client.end_sending();
        CHECK(client.rest().find("200 OK") == std::string::npos);
    }
}

TEST_CASE("a body with two ends hides no second request (RFC 9112, 6.3 and 11.2)") {
    const Serving serving;
    for (const std::string more :
         {"Content-Length: 4\r\nTransfer-Encoding: chunked\r\n",
          "Transfer-Encoding: chunked\r\nContent-Length: 4\r\n",
          "Content-Length: 4\r\nContent-Length: 0\r\n", "Transfer-Encoding: chunked, identity\r\n",
          "Transfer-Encoding: xchunked\r\n",
          "Transfer-Encoding: chunked\r\n"
          "Transfer-Encoding: chunked\r\n"}) {
        CAPTURE(more);
        Client client{serving.port()};
        client.send(serving.post_head("/api/x", more) + "0\r\n\r\n" + serving.get("/smuggled"));
        client.end_sending();
        CHECK(client.rest().find("smuggled") == std::string::npos);
    }
}

TEST_CASE("the server stops while clients hang, wherever they are") {
    std::vector<Client> clients;
    const auto hang = [&](const Serving& serving, const std::string& bytes) {
        clients.emplace_back(serving.port());
        clients.back().send(bytes);
    };
    {
        const Serving serving{
            patient(), [](const http::Request&) {
                return http::Response{200, "text/plain", std::string(32U << 20U, 'x'), {}};
            }};
        hang(serving, "");
        hang(serving, "GET / HT");
        hang(serving, serving.post_head("/api/x", "Content-Length: 9\r\n") + "half");
        hang(serving, serving.get("/not read"));
        hang(serving, serving.get("/read"));
        CHECK(clients.back().reply()->status == 200);
    }
    clients.front().rest(); // and everybody sees that it has gone
}

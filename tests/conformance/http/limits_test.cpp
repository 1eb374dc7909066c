// What is too much: RFC 9110 (2022), 15.5.14 (413), 15.5.15 (414), 15.6.4 (503); RFC 6585 (2012), 5
// (431). A limit is tried at its edge and far beyond it.

#include "serving.h"

#include <condition_variable>
#include <doctest/doctest.h>
#include <memory>
#include <mutex>
#include <vector>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

constexpr std::size_t megabyte = 1U << 20U;

/// Sends the same bytes again and again, until `size` are sent or the server has hung up.
void pour(const Client& client, const std::string& bytes, std::size_t size) {
    for (std::size_t sent = 0; sent < size && client.send(bytes); sent += bytes.size()) {
    }
}

/// An answer 200 that waits until it is let go.
struct Gate {
    std::mutex mutex;
    std::condition_variable changed;
    int waiting = 0;
    bool is_open = false;

    http::Response wait(const http::Request& request) {
        std::unique_lock lock{mutex};
        ++waiting;
        changed.notify_all();
        changed.wait(lock, [&] { return is_open; });
        return echo(request);
    }
    void wait_for(int count) {
        std::unique_lock lock{mutex};
        changed.wait(lock, [&] { return waiting == count; });
    }
    void open() {
        const std::lock_guard lock{mutex};
        is_open = true;
        changed.notify_all();
    }
};

/// What became of one who asked for too much: 0 where the server only hung up.
int status_or_hung_up(Client& client) {
    const auto reply = client.reply();
    return reply ? reply->status : 0;
}

} // namespace

TEST_CASE("an address may have 2 kB") {
    const Serving serving;
    const auto longest = "/" + std::string(2'047, 'a');
    CHECK(ask(serving.port(), serving.get(longest))->body == longest + "|");
    Client client{serving.port()};
    client.send(serving.get(longest + "a"));
    CHECK(client.reply()->status == 414);
    CHECK(client.rest().empty()); // and the connection ends
}

TEST_CASE("headers may have 32 kB, whether they are few or many") {
    const Serving serving;
    const auto of_size = [](std::size_t each, std::size_t count) {
        std::string lines;
        for (std::size_t line = 0; line < count; ++line) {
            lines += fmt::format("X-{}: {}\r\n", line, std::string(each, 'x'));
        }
        return lines;
    };
    CHECK(ask(serving.port(), serving.get("/", of_size(32'000, 1)))->status == 200);
    CHECK(ask(serving.port(), serving.get("/", of_size(300, 100)))->status == 200);
    CHECK(ask(serving.port(), serving.get("/", of_size(33'000, 1)))->status == 431);
    CHECK(ask(serving.port(), serving.get("/", of_size(300, 120)))->status == 431);
    CHECK(ask(serving.port(), serving.get("/", of_size(1, 4'000)))->status == 431);
}

TEST_CASE("a head without an end is stopped, and the server lives") {
    const Serving serving;
    const std::string much(megabyte, 'a');
    for (const std::string beginning :
         {"", "GET /", "GET / HTTP/1.1\r\nX: ", "GET / HTTP/1.1\r\nHost: x\r\n"}) {
        CAPTURE(beginning);
        Client client{serving.port()};
        client.send(beginning);
        pour(client, much, 40 * megabyte);
        const auto status = status_or_hung_up(client);
        const bool is_stopped = status == 0 || (status >= 400 && status < 500);
        CHECK(is_stopped);
    }
    Client lines{serving.port()};
    pour(lines, "\r\n", megabyte);
    CHECK(ask(serving.port(), serving.get("/"))->status == 200);
}

TEST_CASE("a body may have what its path says") {
    const Serving serving{patient(), echo, 50'000};
    const std::string body(50'000, 'b');
    CHECK(ask(serving.port(), serving.post("/api/x", body))->body == "/api/x|" + body);
    CHECK(ask(serving.port(), serving.post("/api/x", body + "b"))->status == 413);
}

TEST_CASE("who sends a whole body that is too long still reads why it is refused") {
    const Serving serving{patient(), echo, 1'000};
    Client client{serving.port()};
    client.send(serving.post("/api/x", std::string(20 * megabyte, 'b')));
    const auto reply = client.reply();
    REQUIRE(reply);
    CHECK(reply->status == 413);
    CHECK(client.rest().empty());
}

TEST_CASE("a body without an end is stopped") {
    auto limits = patient();
    limits.read_over = 4 * megabyte;
    const Serving serving{limits, echo, 1'000};
    Client said{serving.port()};
    said.send(serving.post_head("/api/x", "Content-Length: 99999999999\r\n"));
    CHECK(said.reply()->status == 413); // before any of it is sent
    Client chunked{serving.port()};
    chunked.send(serving.post_head("/api/x", "Transfer-Encoding: chunked\r\n"));
    pour(chunked, "8000\r\n" + std::string(0x8000, 'b') + "\r\n", 4'000 * megabyte);
    chunked.rest();
    CHECK(ask(serving.port(), serving.get("/"))->status == 200);
}

TEST_CASE("a picture of 8 MiB arrives") {
    const Serving serving{
        patient(),
        [](const http::Request& request) {
            return http::Response{200, "text/plain", std::to_string(request.body.size()), {}};
        },
        8 * megabyte};
    CHECK(ask(serving.port(), serving.post("/api/read", std::string(8 * megabyte, 'p')))->body ==
          "8388608");
}

TEST_CASE("while all places are being answered, others are sent away in words") {
    Gate gate;
    auto limits = patient();
    limits.connections = 4;
    const Serving serving{limits, [&](const http::Request& request) { return gate.wait(request); }};
    std::vector<Client> first;
    for (int number = 0; number < 4; ++number) {
        first.emplace_back(serving.port());
        first.back().send(serving.get("/waits"));
    }
    gate.wait_for(4);
    Client late{serving.port()};
    late.send(serving.get("/late"));
    CHECK(late.reply()->status == 503);
    CHECK(late.rest().empty());
    gate.open();
    for (auto& client : first) {
        CHECK(client.reply()->body == "/waits|");
    }
    CHECK(ask(serving.port(), serving.get("/again"))->body == "/again|");
}

TEST_CASE("more connections than there can be wait until others have gone") {
    const Serving serving;
    std::vector<Client> clients;
    for (int number = 0; number < 200; ++number) {
        clients.emplace_back(serving.port());
    }
    CHECK(ask(serving.port(), serving.get("/"))->status == 200);
}

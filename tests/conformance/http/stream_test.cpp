// Answers that go on, over real sockets. How they are framed: RFC 9112 (2022), HTTP/1.1, 7.1,
// Chunked Transfer Coding. Whatever is waited for here comes, or the client gives up after its own
// generous while: no test says how long something may take.

#include "serving.h"

#include <atomic>
#include <condition_variable>
#include <doctest/doctest.h>
#include <list>
#include <mutex>

using namespace thawslip;
using namespace thawslip::test_support;

namespace {

/// What streams send, handed in by a test: each gets all of it from its own beginning on.
class PieceSource {
public:
    void add(const std::string& piece) {
        {
            const std::lock_guard lock{mutex_};
            pieces_.push_back(piece);
        }
        more_.notify_all();
    }
    http::Answer answer() {
        return [this](const http::Request& request) {
            auto response = http::Response{200, "text/event-stream", "too many", {}};
            if (request.path == "/api/stream") {
                response.next = [this, at = std::size_t{0}](auto patience) mutable {
                    return next(at, patience);
                };
            }
            return response;
        };
    }

private:
    std::string next(std::size_t& at, std::chrono::milliseconds patience) {
        std::unique_lock lock{mutex_};
        return more_.wait_for(lock, patience, [&] { return at < pieces_.size(); }) ? pieces_[at++]
                                                                                   : "";
    }
    std::mutex mutex_;
    std::condition_variable more_;
    std::vector<std::string> pieces_;
};

/// A client that has asked for a stream, and the head of its answer.
struct StreamClient {
    Client client;
    std::optional<Reply> head;
    StreamClient(const Serving& serving, const std::string& more = {})
        : StreamClient{serving.port(), serving.get("/api/stream", more)} {}
    StreamClient(int port, const std::string& request) : client{port} {
        client.send(request);
        head = client.reply();
    }
    bool is_stream() const {
        return head && head->headers.contains("transfer-encoding") &&
               head->headers.at("transfer-encoding") == "chunked";
    }
};

/// Until a stream is opened: places that were left are free once the server has seen it.
StreamClient until_opened(const Serving& serving) {
    for (;;) {
        StreamClient listening{serving};
        if (listening.is_stream()) {
            return listening;
        }
    }
}

} // namespace

TEST_CASE("an answer goes on: each piece is a chunk as soon as it is there (RFC 9112, 7.1)") {
    PieceSource source;
    const Serving serving{patient(), source.answer()};
    StreamClient listening{serving};
    REQUIRE(listening.is_stream());
    CHECK(listening.head->headers.at("content-type") == "text/event-stream");
    CHECK(listening.head->headers.at("cache-control") == "no-store");
    CHECK(listening.head->headers.contains("content-security-policy"));
    source.add("one\n");
    CHECK(listening.client.chunk() == "one\n");
    source.add("two\n");
    CHECK(listening.client.chunk() == "two\n");
    const std::string large(5'000, 'l');
    source.add(large);
    std::string got;
    while (got.size() < large.size()) {
        got += listening.client.chunk().value();
    }
    CHECK(got == large);
}

TEST_CASE("who is not our page, or has no key, gets no stream") {
    PieceSource source;
    const Serving serving{patient(), source.answer()};
    const auto head = [&](const std::string& host, const std::string& more) {
        return ask(serving.port(),
                   "GET /api/stream HTTP/1.1\r\nHost: " + host + "\r\n" + more + "\r\n");
    };
    const auto with_key = "Thawslip-Key: " + key + "\r\n";
    CHECK(head("orchard.test", with_key)->status == 421);
    CHECK(head(serving.host(), "")->status == 401);
    CHECK(head(serving.host(), "Thawslip-Key: another\r\n")->status == 401);
    CHECK(head(serving.host(), with_key + "Origin: http://orchard.test\r\n")->status == 403);
    CHECK(head(serving.host(), with_key + "Sec-Fetch-Site: cross-site\r\n")->status == 403);
    CHECK(head(serving.host(), with_key + "Sec-Fetch-Site: same-site\r\n")->status == 403);
    CHECK(StreamClient{serving, "Sec-Fetch-Site: same-origin\r\n"}.is_stream());
}

TEST_CASE("one key has a few streams, all together half of the places, and others are answered") {
    auto limits = patient();
    limits.streams = 4;
    limits.streams_of_one = 3;
    PieceSource source;
    auto started = http::Server::start(
        {}, {{}, [](const std::string& given) { return given.starts_with("phone"); }, {}},
        source.answer(), [](const std::string&) { return 64U; }, limits);
    REQUIRE(started.ok());
    const auto server = std::move(started).value();
    const auto get = [&](const std::string& path, const std::string& by) {
        return fmt::format("GET {} HTTP/1.1\r\nHost: 127.0.0.1:{}\r\nThawslip-Key: {}\r\n\r\n",
                           path, server->port(), by);
    };
    const auto listens = [&](const std::string& by) {
        return std::make_unique<StreamClient>(server->port(), get("/api/stream", by));
    };
    std::list<std::unique_ptr<StreamClient>> open;
    for (int i = 0; i < 3; ++i) {
        CHECK(open.emplace_back(listens("phone 1"))->is_stream());
    }
    const auto fourth = listens("phone 1");
    CHECK_FALSE(fourth->is_stream());
    CHECK(fourth->head->body == "too many"); // whole, so that it is read and asked for again
    CHECK(open.emplace_back(listens("phone 2"))->is_stream());
    CHECK_FALSE(listens("phone 3")->is_stream());
    CHECK(ask(server->port(), get("/api/x", "phone 3"))->status == 200);
    open.pop_front(); // a window is shut
    while (!listens("phone 3")->is_stream()) {
    }
}

TEST_CASE("a stream whose key is worth nothing any longer ends, and gets nothing more") {
    PieceSource source;
    std::atomic<bool> is_let_in = true;
    auto started = http::Server::start(
        {}, {{}, [&](const std::string&) { return is_let_in.load(); }, {}}, source.answer(),
        [](const std::string&) { return 64U; }, patient());
    REQUIRE(started.ok());
    const auto server = std::move(started).value();
    StreamClient listening{server->port(), fmt::format("GET /api/stream HTTP/1.1\r\nHost: "
                                                       "127.0.0.1:{}\r\nThawslip-Key: x\r\n\r\n",
                                                       server->port())};
    source.add("one\n");
    CHECK(listening.client.chunk() == "one\n");
    is_let_in = false;
    source.add("two\n");
    CHECK(listening.client.chunk() == ""); // the last chunk: RFC 9112, 7.1
}

TEST_CASE("no deadline ends a stream that nothing comes of") {
    auto limits = patient();
    limits.headers_in = limits.body_in = limits.answer_out = limits.idle =
        std::chrono::milliseconds{100};
    PieceSource source;
    const Serving serving{limits, source.answer()};
    StreamClient listening{serving};
    source.add("one\n");
    CHECK(listening.client.chunk() == "one\n");
    Client late{serving.port()};
    late.send("GET / HT"); // is shut down by its deadline, which is a stream's as well
    CHECK(late.rest().empty());
    source.add("two\n");
    CHECK(listening.client.chunk() == "two\n");
}

TEST_CASE("who takes nothing of a stream is shut down, and others go on") {
    auto limits = patient();
    limits.answer_out = std::chrono::milliseconds{300};
    limits.streams_of_one = 2;
    PieceSource source;
    const Serving serving{limits, source.answer()};
    StreamClient slow{serving};
    StreamClient good{serving};
    REQUIRE(slow.is_stream());
    const std::string megabyte(1U << 20U, 'm');
    for (int i = 0; i < 24; ++i) { // more than sockets hold
        source.add(megabyte);
    }
    for (std::size_t got = 0; got < 24 * megabyte.size();) {
        const auto chunk = good.client.chunk();
        REQUIRE(chunk);
        got += chunk->size();
    }
    until_opened(serving); // in the place of the slow one
    CHECK(slow.client.rest().size() < 24 * megabyte.size());
}

TEST_CASE(
    "a server that ends has its streams end as they should, and is used while they are open") {
    PieceSource source;
    auto serving = std::make_unique<Serving>(patient(), source.answer());
    StreamClient listening{*serving};
    REQUIRE(listening.is_stream());
    const auto now = std::chrono::steady_clock::now();
    CHECK(serving->server().last_request() >= now);
    source.add("one\n");
    CHECK(listening.client.chunk() == "one\n");
    serving.reset();
    CHECK(listening.client.chunk() == "");
    CHECK(listening.client.rest().empty());
}

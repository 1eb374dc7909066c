// An answer that goes on, on its way to one client: RFC 5482 (2009), TCP User Timeout Option.

#include "http/streaming.h"

#include <arpa/inet.h>
#include <doctest/doctest.h>
#include <memory>
#include <netinet/in.h>
#include <netinet/tcp.h>
#include <sys/socket.h>
#include <unistd.h>
#include <vector>

namespace streaming_test {

using namespace thawslip;

namespace {

/// A connection of this computer with itself.
struct Connection {
    int listening = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    int client = ::socket(AF_INET, SOCK_STREAM | SOCK_CLOEXEC, 0);
    int server = -1;

    Connection() {
        sockaddr_in address = {};
        address.sin_family = AF_INET;
        address.sin_addr.s_addr = htonl(INADDR_LOOPBACK);
        socklen_t size = sizeof address;
        auto* place = reinterpret_cast<sockaddr*>(&address);
        REQUIRE(::bind(listening, place, size) == 0);
        REQUIRE(::listen(listening, 1) == 0);
        REQUIRE(::getsockname(listening, place, &size) == 0);
        REQUIRE(::connect(client, place, size) == 0);
        server = ::accept(listening, nullptr, nullptr);
        REQUIRE(server >= 0);
    }
    Connection(const Connection&) = delete;
    Connection& operator=(const Connection&) = delete;
    ~Connection() {
        hang_up();
        ::close(server);
        ::close(listening);
    }
    void hang_up() {
        if (client >= 0) {
            ::close(client);
        }
        client = -1;
    }
};

struct Stream {
    Connection connection;
    http::Limits limits;
    http::Streams streams{limits};
    bool is_right = true;
    http::KeyTest key = [this](const std::string&) { return is_right; };
    std::vector<std::string> pieces;
    std::size_t asked = 0;
    std::unique_ptr<http::Streaming> streaming;

    void begin() {
        REQUIRE(streams.opened("anna"));
        streaming = std::make_unique<http::Streaming>(
            http::Streaming::Client{nullptr, connection.server, "anna"},
            [this](std::chrono::milliseconds) {
                return asked < pieces.size() ? pieces[asked++] : std::string{};
            },
            streams, key, limits);
    }
    /// At most `size` bytes of what comes next.
    std::string next(std::size_t size) {
        std::string buffer(size, '\0');
        buffer.resize(streaming->read(buffer.data(), size));
        return buffer;
    }
};

} // namespace

TEST_CASE_FIXTURE(Stream, "pieces come as they fit the buffer, and empty ones are waited over") {
    pieces = {"", "", "apples", "pears"};
    begin();
    CHECK(next(4) == "appl");
    CHECK(next(4) == "es");
    CHECK(next(100) == "pears");
    CHECK(asked == 4);
}

TEST_CASE("it is over when the key is worth nothing, all end, or the client goes") {
    for (const std::string cause : {"key", "end", "gone"}) {
        CAPTURE(cause);
        Stream stream;
        stream.pieces = {"apples", "pears"};
        stream.begin();
        CHECK(stream.next(100) == "apples");
        if (cause == "key") {
            stream.is_right = false;
        } else if (cause == "end") {
            stream.streams.end();
        } else {
            stream.connection.hang_up();
        }
        CHECK(stream.next(100).empty()); // not what has come just now
        CHECK(stream.streams.are_open());
        stream.streaming.reset();
        CHECK_FALSE(stream.streams.are_open());
    }
}

TEST_CASE_FIXTURE(Stream, "a client that is carried out of the house is given up after its time") {
    limits.heard_of = std::chrono::milliseconds{12'345};
    begin();
    unsigned timeout = 0;
    socklen_t size = sizeof timeout;
    REQUIRE(::getsockopt(connection.server, IPPROTO_TCP, TCP_USER_TIMEOUT, &timeout, &size) == 0);
    CHECK(timeout == 12'345);
}

} // namespace streaming_test

// Who is shut down, and who gives way. Whatever is waited for here comes, or the test hangs until
// the runner ends it: no test says how long something may take.

#include "http/watch.h"

#include <array>
#include <doctest/doctest.h>
#include <memory>
#include <poll.h>
#include <sys/socket.h>
#include <unistd.h>
#include <vector>

using namespace thawslip;
using http::At;

namespace {

/// Two ends of a connection: the server's, and a client's that sees whether it was shut down.
class Pair {
public:
    Pair() { ::socketpair(AF_UNIX, SOCK_STREAM | SOCK_CLOEXEC, 0, ends_.data()); }
    Pair(const Pair&) = delete;
    Pair& operator=(const Pair&) = delete;
    ~Pair() {
        ::close(ends_[0]);
        ::close(ends_[1]);
    }
    int socket() const { return ends_[0]; }
    bool is_shut() const {
        char byte = 0;
        return ::recv(ends_[1], &byte, 1, MSG_DONTWAIT) == 0;
    }
    void wait_until_shut() const {
        pollfd watched{ends_[1], POLLIN, 0};
        ::poll(&watched, 1, -1);
    }

private:
    std::array<int, 2> ends_ = {-1, -1};
};

http::Limits patient(unsigned connections) {
    http::Limits limits;
    limits.connections = connections;
    limits.headers_in = limits.body_in = limits.answer_out = limits.idle = std::chrono::hours{1};
    return limits;
}

struct Watched {
    http::Watch watch;
    std::vector<std::unique_ptr<Pair>> pairs;

    explicit Watched(const http::Limits& limits) : watch{limits} {}
    const Pair* open() {
        pairs.push_back(std::make_unique<Pair>());
        watch.opened(pairs.back().get(), pairs.back()->socket());
        return pairs.back().get();
    }
    const Pair* open(At at) {
        const auto* pair = open();
        watch.is_at(pair, at);
        return pair;
    }
};

} // namespace

TEST_CASE("who is late is shut down, wherever it is") {
    for (const auto at : {At::Head, At::Refused, At::Body, At::Sending, At::Idle}) {
        CAPTURE(static_cast<int>(at));
        auto limits = patient(4);
        limits.headers_in = limits.body_in = limits.answer_out = limits.idle =
            std::chrono::milliseconds{1};
        Watched watched{limits};
        watched.open(at)->wait_until_shut();
    }
}

TEST_CASE("one that comes when nobody is waited for any longer is measured too") {
    auto limits = patient(4);
    limits.headers_in = std::chrono::milliseconds{1};
    Watched watched{limits};
    watched.open()->wait_until_shut(); // the watch goes to sleep, for there is nobody else
    watched.open()->wait_until_shut();
}

TEST_CASE("each is measured by its own time") {
    auto limits = patient(4);
    limits.body_in = std::chrono::milliseconds{1};
    Watched watched{limits};
    const auto* head = watched.open();
    const auto* idle = watched.open(At::Idle);
    const auto* ours = watched.open(At::Answering);
    watched.open(At::Body)->wait_until_shut();
    CHECK_FALSE(head->is_shut());
    CHECK_FALSE(idle->is_shut());
    CHECK_FALSE(ours->is_shut()); // nobody is late while it is we who are at it
}

TEST_CASE("who has time left is kept while another is late") {
    struct Case {
        At at;
        std::chrono::milliseconds http::Limits::*own;
    };
    for (const auto& c :
         {Case{At::Head, &http::Limits::headers_in}, Case{At::Refused, &http::Limits::body_in},
          Case{At::Body, &http::Limits::body_in}, Case{At::Sending, &http::Limits::answer_out},
          Case{At::Idle, &http::Limits::idle}}) {
        CAPTURE(static_cast<int>(c.at));
        auto limits = patient(4);
        limits.headers_in = limits.body_in = limits.answer_out = limits.idle =
            std::chrono::milliseconds{1};
        limits.*c.own = std::chrono::hours{1};
        Watched watched{limits};
        const auto* kept = watched.open(c.at);
        watched.open(c.at == At::Idle ? At::Body : At::Idle)->wait_until_shut();
        CHECK_FALSE(kept->is_shut());
    }
}

TEST_CASE("where all places are taken, who has kept us waiting longest gives way") {
    Watched watched{patient(2)};
    const auto* first = watched.open();
    const auto* second = watched.open();
    CHECK_FALSE(first->is_shut());
    const auto* third = watched.open();
    CHECK(first->is_shut());
    CHECK_FALSE(second->is_shut());
    CHECK(watched.watch.has_place(third));
    watched.open();
    CHECK(second->is_shut());
}

TEST_CASE("who has got furthest gives way last") {
    Watched watched{patient(5)};
    const auto* sending = watched.open(At::Sending);
    const auto* body = watched.open(At::Body);
    const auto* refused = watched.open(At::Refused);
    const auto* head = watched.open(At::Head);
    const auto* idle = watched.open(At::Idle);
    for (const auto* next : {idle, head, refused, body, sending}) {
        CHECK_FALSE(next->is_shut());
        watched.open(At::Answering);
        CHECK(next->is_shut());
    }
}

TEST_CASE(
    "an answer that goes on has no deadline while nothing is to be sent, and never gives way") {
    auto limits = patient(2); // with time to get from the head to where it is put
    limits.body_in = limits.answer_out = limits.idle = std::chrono::milliseconds{1};
    Watched watched{limits};
    const auto* stream = watched.open(At::Streaming);
    watched.open(At::Idle)->wait_until_shut();
    watched.open(At::Answering);
    watched.open(At::Answering);
    CHECK_FALSE(stream->is_shut());
    watched.watch.is_at(stream, At::Sending); // a piece is to be taken in time
    stream->wait_until_shut();
}

TEST_CASE("while all are being answered, who comes has no place until one is free") {
    Watched watched{patient(2)};
    const auto* first = watched.open(At::Answering);
    const auto* second = watched.open(At::Answering);
    const auto* third = watched.open();
    CHECK_FALSE(first->is_shut());
    CHECK_FALSE(second->is_shut());
    CHECK_FALSE(third->is_shut()); // it is to be told so
    CHECK_FALSE(watched.watch.has_place(third));
    CHECK(watched.watch.has_place(first));
    watched.watch.closed(first);
    CHECK(watched.watch.has_place(third));
}

TEST_CASE("what was closed is not touched") {
    Watched watched{patient(1)};
    const auto* first = watched.open();
    watched.watch.closed(first);
    watched.open();
    CHECK_FALSE(first->is_shut());
    CHECK_FALSE(watched.watch.has_place(first));
    watched.watch.is_at(first, At::Body); // nor does it come back
    CHECK_FALSE(watched.watch.has_place(first));
}

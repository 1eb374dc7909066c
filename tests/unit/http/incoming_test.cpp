// What is refused by a request's head, and of its body: RFC 9110 (2022), section 15; RFC 9112
// (2022), sections 3.2, 6.1 and 6.3.

#include "http/incoming.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>
#include <vector>

using namespace thawslip;

namespace {

using Headers = std::vector<std::pair<std::string, std::string>>;

http::Limits small() {
    http::Limits limits;
    limits.url = 40;
    limits.headers = 300;
    limits.body = 100;
    limits.read_over = 1'000;
    return limits;
}

const http::Terms terms{
    {"127.0.0.1:8123", {}, {}}, small(), [](const std::string& path) -> std::size_t {
        return path == "/api/read" ? 1'000 : 50;
    }};

http::Head head(const std::string& method, const std::string& target, const Headers& more = {}) {
    http::Head one{method, target, "HTTP/1.1", {{"Host", "127.0.0.1:8123"}}};
    if (method == "POST") {
        one.headers.emplace_back("Origin", "http://127.0.0.1:8123");
        one.headers.emplace_back("Content-Type", "application/json");
    }
    one.headers.insert(one.headers.end(), more.begin(), more.end());
    return one;
}

int status_of(const http::Head& one) {
    const auto incoming = http::take_head(one, terms);
    return incoming.refused ? incoming.refused->status : 0;
}

bool is_last(const http::Incoming& incoming) {
    const std::pair<std::string, std::string> close{"Connection", "close"};
    return incoming.refused && !incoming.refused->headers.empty() &&
           incoming.refused->headers.back() == close;
}

} // namespace

TEST_CASE("a head becomes a request") {
    const auto incoming =
        http::take_head(head("GET", "/api/read?as=photo",
                             {{"If-Match", "\"1\""}, {"ACCEPT", "a"}, {"accept", "b"}}),
                        terms);
    REQUIRE_FALSE(incoming.refused);
    CHECK(incoming.request.method == http::Method::Get);
    CHECK(incoming.request.path == "/api/read");
    CHECK(incoming.request.query.at("as") == "photo");
    CHECK(incoming.request.headers.at("if-match") == "\"1\"");
    CHECK(incoming.request.headers.at("accept") == "a, b"); // RFC 9110, 5.3
}

TEST_CASE("methods are told apart by their case (RFC 9110, 9.1)") {
    CHECK(status_of(head("GET", "/")) == 0);
    CHECK(status_of(head("HEAD", "/")) == 0);
    CHECK(status_of(head("POST", "/")) == 0);
    for (const std::string method :
         {"get", "OPTIONS", "TRACE", "CONNECT", "DELETE", "PATCH", "PROPFIND", "GETS", "X"}) {
        CAPTURE(method);
        CHECK(status_of(head(method, "/")) == 405);
    }
}

TEST_CASE("an address of the limit's length passes, and none that is longer (15.5.15)") {
    CHECK(status_of(head("GET", "/" + std::string(39, 'a'))) == 0);
    CHECK(status_of(head("GET", "/" + std::string(40, 'a'))) == 414);
    CHECK(status_of(head("GET", "/?" + std::string(39, 'a'))) == 414);
}

TEST_CASE("headers count with what stands between them (RFC 6585, section 5)") {
    // "Host: 127.0.0.1:8123" and its line end are 22 bytes, "X: " and another's 5.
    CHECK(status_of(head("GET", "/", {{"X", std::string(300 - 22 - 5, 'a')}})) == 0);
    CHECK(status_of(head("GET", "/", {{"X", std::string(300 - 22 - 4, 'a')}})) == 431);
    CHECK(status_of(head("GET", "/", Headers(60, {"X", ""}))) == 431);
}

TEST_CASE("versions that are not HTTP/1 are refused (15.6.6)") {
    for (const std::string version :
         {"HTTP/2.0", "HTTP/0.9", "HTTP/1.2", "http/1.1", "", "HTTP/1.10"}) {
        CAPTURE(version);
        auto one = head("GET", "/");
        one.version = version;
        CHECK(status_of(one) == 505);
    }
    auto old = head("GET", "/");
    old.version = "HTTP/1.0";
    CHECK(status_of(old) == 0);
}

TEST_CASE("what is no header is refused (RFC 9110, 5.1, 5.5 and 5.6.2)") {
    for (const std::string name :
         {"", " ", "X ", "X\t", "X:", "(X)", "X\xC3\xA9", "\"X\"", "X/Y"}) {
        CAPTURE(name);
        CHECK(status_of(head("GET", "/", {{name, "1"}})) == 400);
    }
    for (const auto& value : {std::string{"a\0b", 3}, std::string{"a\r\nY: b"}, std::string{"a\nb"},
                              std::string{"\x1b[2J"}, std::string{"\x7f"}}) {
        CAPTURE(value);
        CHECK(status_of(head("GET", "/", {{"X", value}})) == 400);
    }
    CHECK(status_of(head("GET", "/", {{"X!#$%&'*+-.^_`|~9", "a\tb \xC3\xA9"}, {"Y", ""}})) == 0);
}

TEST_CASE("what two readers could read in two ways is refused (RFC 9112, 3.2, 6.1, 6.3)") {
    for (const auto& more :
         std::vector<Headers>{{{"Host", "127.0.0.1:8123"}},
                              {{"Content-Length", "1"}, {"Content-Length", "2"}},
                              {{"Content-Length", "1"}, {"content-length", "1"}},
                              {{"Transfer-Encoding", "chunked"}, {"Content-Length", "3"}}}) {
        CAPTURE(more.front().first);
        const auto incoming = http::take_head(head("POST", "/", more), terms);
        REQUIRE(incoming.refused);
        CHECK(incoming.refused->status == 400);
        CHECK(is_last(incoming));
    }
    CHECK(status_of(head("POST", "/", {{"Transfer-Encoding", "gzip, chunked"}})) == 501);
    CHECK(status_of(head("POST", "/", {{"Transfer-Encoding", "identity"}})) == 501);
    CHECK(status_of(head("POST", "/", {{"Transfer-Encoding", "Chunked"}})) == 0);
}

TEST_CASE("the host of the absolute form counts (RFC 9112, 3.2.2)") {
    CHECK(status_of(head("GET", "http://127.0.0.1:8123/")) == 0);
    CHECK(status_of(head("GET", "http://orchard.test/")) == 421);
}

TEST_CASE("what is no address is refused, and the connection ends") {
    const auto incoming = http::take_head(head("GET", "/%00"), terms);
    REQUIRE(incoming.refused);
    CHECK(incoming.refused->status == 400);
    CHECK(is_last(incoming));
}

TEST_CASE("a body may have what its path says, and never more than the limit of all") {
    const auto length = [](const std::string& path, const std::string& bytes) {
        return status_of(head("POST", path, {{"Content-Length", bytes}}));
    };
    CHECK(length("/api/edit", "50") == 0);
    CHECK(length("/api/edit", "51") == 413);
    CHECK(length("/api/read", "100") == 0);
    CHECK(length("/api/read", "101") == 413);
    CHECK(length("/api/edit", "18446744073709551616") == 413); // 2^64
    CHECK(length("/api/edit", "99999999999999999999999999") == 413);
}

TEST_CASE("where nothing may be sent, who says nothing of a length sends nothing") {
    auto none = terms;
    none.body_limit = [](const std::string&) -> std::size_t { return 0; };
    CHECK_FALSE(http::take_head(head("POST", "/api/day"), none).refused);
    CHECK_FALSE(http::take_head(head("POST", "/api/day", {{"Content-Length", "0"}}), none).refused);
    const auto one = http::take_head(head("POST", "/api/day", {{"Content-Length", "1"}}), none);
    REQUIRE(one.refused);
    CHECK(one.refused->status == 413);
}

TEST_CASE("a body without a length is counted as it comes") {
    auto incoming =
        http::take_head(head("POST", "/api/edit", {{"Transfer-Encoding", "chunked"}}), terms);
    http::take_body(incoming, std::string(30, 'a'), terms.limits);
    http::take_body(incoming, std::string(20, 'b'), terms.limits);
    CHECK_FALSE(incoming.refused);
    CHECK(incoming.request.body == std::string(30, 'a') + std::string(20, 'b'));
    http::take_body(incoming, "c", terms.limits);
    REQUIRE(incoming.refused);
    CHECK(incoming.refused->status == 413);
    CHECK(incoming.request.body.empty());
}

TEST_CASE("what is refused is read over up to a limit, and none of it is kept") {
    auto incoming = http::take_head(head("POST", "/api/edit", {{"Content-Length", "900"}}), terms);
    REQUIRE(incoming.refused);
    CHECK_FALSE(incoming.is_over);
    http::take_body(incoming, std::string(1'000, 'a'), terms.limits);
    CHECK_FALSE(incoming.is_over);
    CHECK(incoming.request.body.empty());
    http::take_body(incoming, "a", terms.limits);
    CHECK(incoming.is_over);
    CHECK(http::take_head(head("POST", "/", {{"Content-Length", "1001"}}), terms).is_over);
}

TEST_CASE("who asks before sending a body sends none where it is refused (RFC 9110, 10.1.1)") {
    CHECK(http::take_head(
              head("POST", "/", {{"Content-Length", "900"}, {"Expect", "100-continue"}}), terms)
              .is_over);
    CHECK_FALSE(http::take_head(
                    head("POST", "/", {{"Content-Length", "9"}, {"Expect", "100-continue"}}), terms)
                    .is_over);
}

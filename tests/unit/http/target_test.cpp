// Targets of requests: RFC 9112 (2022), section 3.2; RFC 3986 (2005), sections 2.1 and 3.3; RFC
// 3629 (2003), section 10, for what UTF-8 is not; WHATWG, URL, section 5.1, for the query.

#include "http/target.h"

#include <doctest/doctest.h>
#include <map>
#include <string>

using namespace thawslip;

namespace {

std::string path_of(const std::string& text) {
    const auto target = http::read_target(text);
    return target ? target->path : "none";
}

} // namespace

TEST_CASE("a path is decoded once") {
    CHECK(path_of("/") == "/");
    CHECK(path_of("/api/day/3") == "/api/day/3");
    CHECK(path_of("/%61pi/%64ay") == "/api/day");
    CHECK(path_of("/a%2Fb") == "/a/b");
    CHECK(path_of("/%2561") == "/%61"); // not twice
    CHECK(path_of("/%C3%A9t%c3%a9") == "/été");
    CHECK(path_of("/a+b") == "/a+b");         // a plus is a plus: only forms' queries say otherwise
    CHECK(path_of("/..//./x") == "/..//./x"); // names no file, so it stays
}

TEST_CASE("a query is what a form writes") {
    const auto target = http::read_target("/api/read?as=frame&width=640&height=480");
    REQUIRE(target);
    CHECK(target->path == "/api/read");
    const std::map<std::string, std::string> expected = {
        {"as", "frame"}, {"width", "640"}, {"height", "480"}};
    CHECK(target->query == expected);
    CHECK(http::read_target("/?a=1+2%2B3")->query.at("a") == "1 2+3");
    CHECK(http::read_target("/?a=1&a=2")->query.at("a") == "2");
    CHECK(http::read_target("/?a=b=c")->query.at("a") == "b=c");
    CHECK(http::read_target("/?a")->query.at("a").empty());
    CHECK(http::read_target("/?&&a=1&")->query.size() == 1);
    CHECK(http::read_target("/?")->query.empty());
    CHECK(http::read_target("/?a=/?b")->query.at("a") == "/?b"); // RFC 3986, 3.4
}

TEST_CASE("the absolute form is known, and its host counts (RFC 9112, 3.2.2)") {
    const auto target = http::read_target("http://127.0.0.1:8123/api/state?x=1");
    REQUIRE(target);
    CHECK(target->host == "127.0.0.1:8123");
    CHECK(target->path == "/api/state");
    CHECK(http::read_target("HTTP://orchard.test")->path == "/"); // 3.2.1: an empty path is "/"
    CHECK(http::read_target("HTTP://orchard.test")->host == "orchard.test");
    CHECK(http::read_target("http://orchard.test?x=1")->query.at("x") == "1");
}

TEST_CASE("what is no target is none") {
    for (const std::string text : {"",
                                   "*",
                                   "api/state",
                                   "?x",
                                   "127.0.0.1:8123",
                                   "https://127.0.0.1:8123/",
                                   "http://",
                                   "%2F",
                                   "/%",
                                   "/%4",
                                   "/%4g",
                                   "/%g4",
                                   "/%-1",
                                   "/%+1",
                                   "/% 1", // two hexadecimal digits, no others
                                   "/%00",
                                   "/a%00b",
                                   "/?a=%00",
                                   "/?%00=a", // NUL
                                   "/%0a",
                                   "/%0D%0AHost:x",
                                   "/%7f",
                                   "/%1b[2J", // control characters
                                   "/%C0%AF",
                                   "/%E0%80%AF",
                                   "/%FF",
                                   "/%C3",
                                   "/%ED%A0%80",
                                   "/?a=%F5%80%80%80", // no UTF-8
                                   "/\xC3\xA9",
                                   "/a b",
                                   "/a\tb",
                                   "/a\nb",
                                   "/#here"}) { // not as it must be sent
        CAPTURE(text);
        CHECK_FALSE(http::read_target(text));
    }
}

TEST_CASE("every byte decodes to itself, or to nothing") {
    for (int byte = 0; byte < 256; ++byte) {
        constexpr const char* digits = "0123456789ABCDEF";
        const std::string text = {'/', '%', digits[byte / 16], digits[byte % 16]};
        CAPTURE(text);
        const bool is_text = byte >= ' ' && byte < 0x7F;
        const auto expected =
            is_text ? std::string{'/', static_cast<char>(byte)} : std::string{"none"};
        CHECK(path_of(text) == expected);
    }
}

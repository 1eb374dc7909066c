// Where a server listens, or why it cannot.

#include "http/listen.h"

#include <doctest/doctest.h>
#include <fmt/format.h>
#include <string>

using namespace thawslip;

namespace {

std::string why_not(const std::string& address, int port = 0) {
    const auto listening = http::Listening::open({address, port});
    return listening ? "it listens" : listening.fault();
}

} // namespace

TEST_CASE("a port that is free is found, and is then taken") {
    const auto first = http::Listening::open({});
    REQUIRE(first);
    CHECK(first.value().port() > 0);
    CHECK(why_not("127.0.0.1", first.value().port()) ==
          fmt::format("port {} of 127.0.0.1 is taken by another program", first.value().port()));
}

TEST_CASE("a port is free again when it is given back") {
    int port = 0;
    {
        const auto first = http::Listening::open({});
        REQUIRE(first);
        port = first.value().port();
    }
    CHECK(why_not("127.0.0.1", port) == "it listens");
}

TEST_CASE("what is no address or no port is said") {
    for (const std::string address :
         {"", "localhost", "127.0.0.1:80", "127.1", "256.0.0.1", "::1", "127.0.0.1 ", "-1"}) {
        CAPTURE(address);
        CHECK(why_not(address).find("is no place to listen at, expected such as 127.0.0.1:8123") !=
              std::string::npos);
    }
    CHECK(why_not("127.0.0.1", -1).find("is no place") != std::string::npos);
    CHECK(why_not("127.0.0.1", 65'536).find("is no place") != std::string::npos);
}

TEST_CASE("another computer's address is not listened at") {
    // RFC 5737 (2010), section 3: for documentation, so no computer has it.
    CHECK(why_not("192.0.2.7") == "192.0.2.7 is no address of this computer");
}

// Where phones of the house may ask: addresses of RFC 1918 (1996), section 3, and no others.

#include "app/desk/house_place.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <string>
#include <vector>

using namespace thawslip;
using app::house_place;

namespace {

const std::vector<std::string> own = {"127.0.0.1", "192.168.1.20", "203.0.113.9", "10.0.0.5"};

std::string why_not(const std::string& text) {
    const auto place = house_place(text, own);
    return place ? "it may" : place.fault();
}

} // namespace

TEST_CASE("an address of the house is one, with a port or without") {
    const auto usual = house_place("192.168.1.20", own);
    REQUIRE(usual);
    CHECK(usual.value().address == "192.168.1.20");
    CHECK(usual.value().port == app::usual_house_port);
    const auto named = house_place("10.0.0.5:8123", own);
    REQUIRE(named);
    CHECK(named.value().address == "10.0.0.5");
    CHECK(named.value().port == 8123);
}

TEST_CASE("all others are refused, and this computer's own are named") {
    for (const std::string text :
         {"", "0.0.0.0", "127.0.0.1", "localhost", "203.0.113.9", "8.8.8.8:80", "192.168.1",
          "192.168.1.20:", "192.168.1.20:0", "192.168.1.20:65536", "192.168.1.20:-1",
          "192.168.1.20:80x", "192.168.1.20:80:80", "::1", "fd00::1", "192.168.1.20 ",
          "http://192.168.1.20"}) {
        CAPTURE(text);
        CHECK(why_not(text).find("is no address of the house's own network, expected one such as "
                                 "192.168.1.20 or 192.168.1.20:8123; this computer has "
                                 "192.168.1.20 and 10.0.0.5") != std::string::npos);
    }
}

TEST_CASE("another computer's address is refused") {
    CHECK(why_not("192.168.1.21") ==
          "192.168.1.21 is no address of this computer; this computer has "
          "192.168.1.20 and 10.0.0.5");
}

TEST_CASE("a computer without a network says so") {
    const auto place = house_place("8.8.8.8", {"127.0.0.1"});
    REQUIRE_FALSE(place);
    CHECK(place.fault().find("this computer has none") != std::string::npos);
}

TEST_CASE("every computer has an address of its own") {
    const auto addresses = app::own_addresses();
    CHECK(std::find(addresses.begin(), addresses.end(), "127.0.0.1") != addresses.end());
}

// Which addresses are a house's own: RFC 1918 (1996), section 3; RFC 3927 (2005), section 2.1. The
// others at their edges, and RFC 6598 (2012), section 7; RFC 5737 (2010), section 3; RFC 1122
// (1989), section 3.2.1.3.

#include "http/address.h"

#include <doctest/doctest.h>
#include <netinet/in.h>
#include <string>

using namespace thawslip;

TEST_CASE("the networks of a house, from their first address to their last") {
    for (const std::string address :
         {"10.0.0.0", "10.255.255.255", "172.16.0.0", "172.31.255.255", "192.168.0.0",
          "192.168.255.255", "169.254.0.0", "169.254.255.255"}) {
        CAPTURE(address);
        CHECK(http::is_private_address(address));
    }
}

TEST_CASE("all others are not, nor is what is no address") {
    for (const std::string address : {"9.255.255.255",
                                      "11.0.0.0",
                                      "172.15.255.255",
                                      "172.32.0.0",
                                      "192.167.255.255",
                                      "192.169.0.0",
                                      "169.253.255.255",
                                      "169.255.0.0",
                                      "127.0.0.1",
                                      "0.0.0.0",
                                      "255.255.255.255",
                                      "100.64.0.1",
                                      "203.0.113.9",
                                      "224.0.0.1",
                                      "",
                                      "localhost",
                                      "10.1",
                                      "10.0.0.0.0",
                                      "010.0.0.1",
                                      "::ffff:10.0.0.1",
                                      "fd00::1",
                                      "10.0.0.1 ",
                                      "0x0a000001"}) {
        CAPTURE(address);
        CHECK_FALSE(http::is_private_address(address));
    }
}

TEST_CASE("an address is written as it is read") {
    sockaddr_in four = {};
    four.sin_family = AF_INET;
    four.sin_addr.s_addr = htonl(0xC0'A8'01'1F);
    CHECK(http::text_of(reinterpret_cast<const sockaddr*>(&four)) == "192.168.1.31");
    four.sin_family = AF_INET6;
    CHECK(http::text_of(reinterpret_cast<const sockaddr*>(&four)).empty());
    CHECK(http::text_of(nullptr).empty());
}

// How many answers may go on at once, of one key and of all.

#include "http/streams.h"

#include <doctest/doctest.h>
#include <thread>

namespace streams_test {

using namespace thawslip;

namespace {

http::Limits at_most(unsigned all, unsigned of_one) {
    http::Limits limits;
    limits.streams = all;
    limits.streams_of_one = of_one;
    return limits;
}

} // namespace

TEST_CASE("one key has so many, and others theirs, until there are too many of all") {
    http::Streams streams{at_most(5, 2)};
    CHECK_FALSE(streams.are_open());
    CHECK(streams.opened("anna"));
    CHECK(streams.are_open());
    CHECK(streams.opened("anna"));
    CHECK_FALSE(streams.opened("anna"));
    CHECK(streams.opened("berta"));
    CHECK(streams.opened("berta"));
    CHECK(streams.opened("clara")); // the fifth
    CHECK_FALSE(streams.opened("clara"));
    CHECK_FALSE(streams.opened("dora"));
}

TEST_CASE("what is closed gives its place back, of its key and of all") {
    http::Streams streams{at_most(3, 2)};
    REQUIRE(streams.opened("anna"));
    REQUIRE(streams.opened("anna"));
    REQUIRE(streams.opened("berta"));
    streams.closed("berta");
    CHECK_FALSE(streams.opened("anna")); // who has two already
    CHECK(streams.opened("clara"));
    streams.closed("anna");
    CHECK(streams.opened("anna"));
    CHECK_FALSE(streams.opened("anna"));
    CHECK_FALSE(streams.opened("dora"));
    streams.closed("anna");
    streams.closed("anna");
    CHECK(streams.are_open());
    streams.closed("clara");
    CHECK_FALSE(streams.are_open());
    CHECK(streams.opened("anna"));
}

TEST_CASE("when all are to end, they are told so, waited for, and none is opened any more") {
    http::Streams streams{at_most(4, 4)};
    REQUIRE(streams.opened("anna"));
    REQUIRE(streams.opened("berta"));
    CHECK_FALSE(streams.are_over());
    std::thread clients{[&streams] {
        while (!streams.are_over()) {
            std::this_thread::yield();
        }
        streams.closed("anna");
        streams.closed("berta");
    }};
    streams.end();
    clients.join();
    CHECK(streams.are_over());
    CHECK_FALSE(streams.are_open());
    CHECK_FALSE(streams.opened("clara"));
}

} // namespace streams_test

// Compiled where there is no libmicrohttpd, so that nobody thinks it was tested.
#include "http/server.h"
#include "support/skip.h"

#include <doctest/doctest.h>

TEST_CASE("clients are answered by a real server") {
    const auto started = thawslip::http::Server::start({}, {}, {}, {});
    CHECK_FALSE(started);
    CHECK(started.fault() == "this thawslip was built without libmicrohttpd and has no desk");
    thawslip::test_support::skip("libmicrohttpd (Debian package libmicrohttpd-dev) is not here");
}

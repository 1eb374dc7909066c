// Compiled where there is no libmicrohttpd, so that nobody thinks it was tested.
#include "support/command.h"
#include "support/skip.h"

#include <doctest/doctest.h>

using namespace thawslip::test_support;

TEST_CASE("a program without the library says so, and leaves nothing behind") {
    const ScratchFolder home;
    const auto said = run("env HOME=" + shell_word(home.path().string()) + " " + THAWSLIP_PROGRAM +
                          " desk --no-open");
    CHECK(said.status == 3);
    CHECK(said.err == "error: this thawslip was built without libmicrohttpd and has no desk\n");
    skip("libmicrohttpd (Debian package libmicrohttpd-dev) is not here");
}

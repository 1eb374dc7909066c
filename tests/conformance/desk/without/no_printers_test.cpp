// Compiled where there is no CUPS, so that nobody thinks it was tested.
#include "support/skip.h"

#include <doctest/doctest.h>

TEST_CASE("the page prints on a printer, and a double tap prints once") {
    thawslip::test_support::skip("CUPS (Debian packages libcups2-dev, cups-daemon) is not here");
}

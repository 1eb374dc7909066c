// Compiled where there is no CUPS server to start, so that nobody thinks it was tested.
#include "support/skip.h"

#include <doctest/doctest.h>

TEST_CASE("what arrives at a printer is looked at with a real CUPS server") {
    thawslip::test_support::skip("cupsd (Debian package cups-daemon) or libcups is not here");
}

#include "app/progress_line.h"

#include <doctest/doctest.h>

using std::chrono::seconds;
using thawslip::app::progress_text;

TEST_CASE("how far work is, how fast, and how long it takes still") {
    CHECK(progress_text("reading", 120, 1000, std::chrono::milliseconds{500}) ==
          "reading: 120 of 1000, 240 a second, 4 s left");
    CHECK(progress_text("drawing", 3, 12, seconds{2}) ==
          "drawing: 3 of 12, 1.5 a second, 6 s left");
    CHECK(progress_text("writing", 100, 100'000, seconds{10}) ==
          "writing: 100 of 100000, 10 a second, 167 min left");
}

TEST_CASE("nothing done yet, nothing to do, and more than there was") {
    CHECK(progress_text("reading", 0, 0, seconds{1}) == "reading: 0 of 0, 0.0 a second, 0 s left");
    CHECK(progress_text("reading", 0, 9, seconds{1}).ends_with("150 min left")); // 0.001 a second
    CHECK(progress_text("reading", 7, 5, seconds{1}).ends_with("0 s left"));
}

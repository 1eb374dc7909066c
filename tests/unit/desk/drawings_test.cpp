#include "desk/drawings.h"

#include <doctest/doctest.h>
#include <string>

using namespace thawslip;
using namespace thawslip::literals;

namespace {

/// A page with nothing on it but a rule of that many points.
layout::Frame ruled(int points) {
    layout::Frame frame;
    frame.items = {layout::Rule{{{1_mm, 2_mm}, {Length::points(points), 1_mm}}}};
    return frame;
}

} // namespace

TEST_CASE("the last 1024 drawings are kept, of each one") {
    desk::Drawings drawings;
    const auto keep = [&](int points) { return drawings.keep(ruled(points), {}, "Label"); };
    const auto first = keep(1);
    const auto second = keep(2);
    CHECK(first != second);
    CHECK(keep(1) == first); // the newest again, so that the second is the oldest
    for (int points = 3; points <= 1024; ++points) {
        keep(points);
    }
    CHECK(drawings.svg(first).has_value());
    CHECK(drawings.svg(second).has_value());
    keep(1025);
    CHECK(drawings.svg(first).has_value());
    CHECK_FALSE(drawings.svg(second).has_value());
    CHECK_FALSE(drawings.svg("no such name").has_value());
}

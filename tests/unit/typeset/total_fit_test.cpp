#include "paragraphs.h"

#include <doctest/doctest.h>

using namespace thawslip::typeset;
using namespace thawslip::test_support;

namespace {

using Lines = std::vector<LineRange>;

} // namespace

TEST_CASE("no boxes are no lines") {
    CHECK(total_fit({}, 10.0).empty());
    CHECK(count_lines({}, 10.0) == 0);
}

TEST_CASE("lines are even where filling each would leave one short") {
    // Filling each gives 4+1+4, 2, 9, 8: the second line nearly empty.
    CHECK(total_fit(boxes({4, 4, 2, 9, 8}), 10.0) == Lines{{0, 0}, {1, 2}, {3, 3}, {4, 4}});
}

TEST_CASE("a single short word moves to the last line only when nothing else will do") {
    CHECK(total_fit(boxes({5, 5, 5, 2}), 17.0) == Lines{{0, 1}, {2, 3}});
    CHECK(total_fit(boxes({16, 2}), 17.0) == Lines{{0, 0}, {1, 1}});
}

TEST_CASE("a box that is too wide stands alone") {
    CHECK(count_lines(boxes({2, 30, 2}), 20.0) == 3);
    CHECK(total_fit(boxes({2, 30, 2}), 20.0) == Lines{{0, 0}, {1, 1}, {2, 2}});
}

TEST_CASE("a line is not ended inside a word when it can as well end after one") {
    auto hyphened = boxes({5, 5, 5, 7});
    CHECK(total_fit(hyphened, 17.0) == Lines{{0, 2}, {3, 3}});
    hyphened.boxes[2].penalty = 1e4;
    CHECK(total_fit(hyphened, 17.0) == Lines{{0, 1}, {2, 3}});
}

TEST_CASE("demerits are those of Knuth and Plass") {
    // A line a quarter of the measure short has badness 100: (1 + 100 + 20)².
    auto two = boxes({15, 20});
    two.boxes[0].penalty = 20.0;
    CHECK(cost_of(two, {0, 0}, 20.0).demerits == doctest::Approx(121.0 * 121.0));
    CHECK(cost_of(two, {1, 1}, 20.0).demerits == 0.0);
}

TEST_CASE("the width of a line measured by itself goes before the sum") {
    auto close = boxes({5, 5});
    close.exact.push_back({0, 1, 10.5});
    CHECK(count_lines(close, 10.6) == 1);
    CHECK(close.width(0, 0) == 5.0);
}

// Words beside a scale: as near to their times as they can stand without covering each other.

#include "layout/areas/spread.h"
#include "support/random.h"

#include <doctest/doctest.h>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

double cost(const std::vector<Length>& tops, const std::vector<Wanted>& all) {
    double sum = 0;
    for (std::size_t i = 0; i < tops.size(); ++i) {
        const double moved = (tops[i] - all[i].top).in_points();
        sum += moved * moved;
    }
    return sum;
}

bool is_allowed(const std::vector<Length>& tops, const std::vector<Wanted>& all, Length gap,
                Length from, Length to) {
    const Length hair = Length::points(1e-6);
    bool allowed = tops.front() >= from - hair && tops.back() + all.back().height <= to + hair;
    for (std::size_t i = 1; i < tops.size(); ++i) {
        allowed = allowed && tops[i] >= tops[i - 1] + all[i - 1].height + gap - hair;
    }
    return allowed;
}

} // namespace

TEST_CASE("what has room stands where it wants, and what has none is moved alike to both sides") {
    CHECK(spread({{10_pt, 5_pt}, {30_pt, 5_pt}}, 2_pt, 0_pt, 100_pt) == std::vector{10_pt, 30_pt});
    CHECK(spread({{50_pt, 10_pt}, {50_pt, 10_pt}}, 2_pt, 0_pt, 100_pt) ==
          std::vector{44_pt, 56_pt});
    CHECK(spread({{95_pt, 10_pt}, {95_pt, 10_pt}}, 0_pt, 0_pt, 100_pt) ==
          std::vector{80_pt, 90_pt});
    CHECK(spread({}, 1_pt, 0_pt, 1_pt).empty());
}

TEST_CASE("no other places that are allowed are nearer to those that are wanted") {
    test_support::Random random{20261203};
    for (int round = 0; round < 300; ++round) {
        std::vector<Wanted> all;
        Length sum;
        Length at;
        for (auto n = 1 + random.below(7); n > 0; --n) {
            at += Length::points(random.between(0, 30));
            all.push_back({at, Length::points(random.between(3, 20))});
            sum += all.back().height + 2_pt;
        }
        const Length to = sum + Length::points(random.between(0, 40));
        const auto tops = spread(all, 2_pt, 0_pt, to);
        CAPTURE(round);
        REQUIRE(is_allowed(tops, all, 2_pt, 0_pt, to));
        for (std::size_t first = 0; first < tops.size(); ++first) {
            for (std::size_t last = first; last < tops.size(); ++last) {
                for (const double by : {-0.01, 0.01}) {
                    auto moved = tops;
                    for (std::size_t i = first; i <= last; ++i) {
                        moved[i] += Length::points(by);
                    }
                    CHECK((!is_allowed(moved, all, 2_pt, 0_pt, to) ||
                           cost(moved, all) >= cost(tops, all)));
                }
            }
        }
    }
}

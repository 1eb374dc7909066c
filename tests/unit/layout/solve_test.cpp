#include "labels.h"
#include "layout/solve.h"

#include <optional>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

struct Fixture {
    wording::Print print = testing::small_label();
    Layout layout = testing::layout_from(testing::small_layout);
    Contents contents = testing::shaped(print, layout);

    std::optional<Sizing> solve_in(Length width, Length height) const {
        return solve(layout, contents, {width, height}, testing::fonts());
    }
};

} // namespace

TEST_CASE_FIXTURE(Fixture, "a larger cell never gives smaller type and never leaves out more") {
    for (int width = 50; width <= 130; width += 4) {
        std::optional<Sizing> before;
        for (int height = 16; height <= 80; height += 2) {
            const auto sizes = solve_in(Length::millimetres(width), Length::millimetres(height));
            if (before) {
                REQUIRE(sizes.has_value());
                CHECK(sizes->scale.value >= before->scale.value);
                CHECK(sizes->dropped <= before->dropped);
            }
            before = sizes;
        }
    }
    for (int height = 20; height <= 60; height += 4) {
        std::optional<Sizing> before;
        for (int width = 40; width <= 160; width += 2) {
            const auto sizes = solve_in(Length::millimetres(width), Length::millimetres(height));
            if (before) {
                REQUIRE(sizes.has_value());
                CHECK(sizes->scale.value >= before->scale.value);
            }
            before = sizes;
        }
    }
}

TEST_CASE_FIXTURE(Fixture, "what is optional leaves before anything shrinks below comfortable") {
    bool left = false;
    for (int height = 80; height >= 16; --height) {
        const auto sizes = solve_in(90_mm, Length::millimetres(height));
        if (!sizes) {
            break;
        }
        left = left || sizes->dropped == 1;
        if (sizes->scale.value < 1.0) {
            CHECK(sizes->dropped == 1);
        }
        if (sizes->dropped == 1) {
            CHECK(sizes->scale.value <= 1.0); // dropping buys comfort, never size
        }
    }
    CHECK(left);
}

TEST_CASE_FIXTURE(Fixture, "a cell as much higher as a refusal says does take the words") {
    const Size small{90_mm, 14_mm};
    REQUIRE_FALSE(solve(layout, contents, small, testing::fonts()).has_value());
    const auto refusal = explain(layout, contents, small, print, testing::fonts());
    CHECK(refusal.dish == print.dish);
    CHECK(refusal.area == "finish");
    CHECK(refusal.short_by > 0_mm);
    CHECK(solve_in(90_mm, 14_mm + refusal.short_by).has_value());
    CHECK_FALSE(solve_in(90_mm, 14_mm + refusal.short_by - 0.1_mm).has_value());
}

TEST_CASE_FIXTURE(Fixture,
                  "the dish is louder than the dates, the dates than the body, at every scale") {
    for (int step = 0; step <= 20; ++step) {
        const Scale scale{step / 10.0};
        const auto x_height = [&](const char* name) {
            return x_height_at(*text_of(*layout.area(name)), scale);
        };
        CHECK(x_height("dish") > x_height("made"));
        CHECK(x_height("made") >= x_height("thaw"));
        CHECK(x_height("thaw") >= least_x_height - 0.001_mm);
    }
}

TEST_CASE("prints of a sheet agree on the size of the one with least room") {
    Sizing roomy{{1.8}, 0};
    Sizing snug{{1.2}, 0};
    agree({&roomy, &snug});
    CHECK(roomy.scale.value == doctest::Approx(1.2));
    CHECK(snug.scale.value == doctest::Approx(1.2));
}

TEST_CASE("a cramped print does not drag the others below comfortable") {
    Sizing roomy{{1.8}, 0};
    Sizing cramped{{0.4}, 1};
    agree({&roomy, &cramped});
    CHECK(roomy.scale.value == doctest::Approx(1.0));
    CHECK(cramped.scale.value == doctest::Approx(0.4));
}

#include "labels.h"
#include "layout/solve.h"

#include <optional>

namespace solve_test {

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
    SizedPrint sized(Sizing& sizing) const { return {layout, contents, {90_mm, 60_mm}, sizing}; }
};

/// The same with the dish in a group of its own before the rest.
struct GroupFixture : Fixture {
    GroupFixture() {
        layout.groups = {"identity", "rest"};
        for (auto& area : layout.areas) {
            if (auto* text = std::get_if<TextArea>(&area.kind)) {
                text->group = takes(*text, "dish") ? 0 : 1;
            }
        }
    }
};

/// Of a layout with one group.
double scale_in(const Sizing& sizing) {
    return sizing.scales[0].value;
}

} // namespace

TEST_CASE_FIXTURE(Fixture, "a larger cell never gives smaller type and never leaves out more") {
    for (int width = 50; width <= 130; width += 4) {
        std::optional<Sizing> before;
        for (int height = 16; height <= 80; height += 2) {
            const auto sizes = solve_in(Length::millimetres(width), Length::millimetres(height));
            if (before) {
                REQUIRE(sizes.has_value());
                CHECK(scale_in(*sizes) >= scale_in(*before));
                CHECK(sizes->conceded <= before->conceded);
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
                CHECK(scale_in(*sizes) >= scale_in(*before));
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
        left = left || sizes->conceded == 1;
        if (scale_in(*sizes) < 1.0) {
            CHECK(sizes->conceded == 1);
        }
        if (sizes->conceded == 1) {
            CHECK(scale_in(*sizes) <= 1.0); // dropping buys comfort, never size
        }
    }
    CHECK(left);
}

TEST_CASE_FIXTURE(Fixture,
                  "a word that no size takes whole costs the rest neither words nor size") {
    print.fields.front() = testing::field("dish", {std::string(90, 'o') + " soup"});
    contents = testing::shaped(print, layout);
    const Size room{90_mm, 100_mm};
    const auto sizes = solve(layout, contents, room, testing::fonts());
    REQUIRE(sizes.has_value());
    CHECK(sizes->conceded == 0);
    CHECK(scale_in(*sizes) > 1.0);
    CHECK(arrange(layout, contents, room, *sizes, testing::fonts()).cut_paragraphs == 1);
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

TEST_CASE_FIXTURE(Fixture, "prints of a sheet agree on the size of the one with least room") {
    Sizing roomy = sizing_at({1.8}, 0);
    Sizing snug = sizing_at({1.2}, 0);
    agree({sized(roomy), sized(snug)}, testing::fonts());
    CHECK(scale_in(roomy) == doctest::Approx(1.2));
    CHECK(scale_in(snug) == doctest::Approx(1.2));
}

TEST_CASE_FIXTURE(Fixture,
                  "cramped prints agree among themselves and do not drag the others down") {
    Sizing roomy = sizing_at({1.8}, 0);
    Sizing cramped = sizing_at({0.4}, 1);
    Sizing tight = sizing_at({0.7}, 1);
    agree({sized(cramped), sized(roomy), sized(tight)}, testing::fonts());
    CHECK(scale_in(roomy) == doctest::Approx(1.8));
    CHECK(scale_in(cramped) == doctest::Approx(0.4));
    CHECK(scale_in(tight) == doctest::Approx(0.4));
}

TEST_CASE_FIXTURE(Fixture, "what is read as one agrees on one size, cramped or not") {
    Sizing roomy = sizing_at({1.8}, 0);
    Sizing cramped = sizing_at({0.4}, 1);
    Sizing tight = sizing_at({0.7}, 1);
    agree_on_one({sized(cramped), sized(roomy), sized(tight)}, testing::fonts());
    for (const auto& sizing : {roomy, cramped, tight}) {
        CHECK(scale_in(sizing) == doctest::Approx(0.4));
    }
    agree_on_one({}, testing::fonts()); // of nothing there is none
}

TEST_CASE_FIXTURE(GroupFixture, "the first group grows first, and the last shrinks first") {
    const auto roomy = solve_in(90_mm, 60_mm);
    REQUIRE(roomy.has_value());
    CHECK(roomy->scales[0].value == doctest::Approx(2.0));
    bool only_last_shrank = false;
    for (int height = 60; height >= 16; --height) {
        const auto sizes = solve_in(90_mm, Length::millimetres(height));
        if (!sizes) {
            break;
        }
        const double first = sizes->scales[0].value;
        const double last = sizes->scales[1].value;
        CHECK((first >= 1.0 || last == 0.0)); // the first goes below only when the last is down
        CHECK((last <= 1.0 || first >= 1.0));
        only_last_shrank |= first == 1.0 && last < 1.0;
    }
    CHECK(only_last_shrank);
}

TEST_CASE_FIXTURE(GroupFixture, "what one group gives up for a sheet, those behind it take") {
    bool gained = false;
    for (int height = 24; height <= 44; ++height) {
        const Size room{90_mm, Length::millimetres(height)};
        auto own = solve(layout, contents, room, testing::fonts());
        if (!own || own->conceded > 0 || own->scales[1].value < 1.0) {
            continue;
        }
        const double before = own->scales[1].value;
        Sizing other = sizing_at({2.0}, 0); // of a print that has room, but for a long name
        other.scales[0] = {1.0};
        agree({{layout, contents, room, *own}, {layout, contents, {90_mm, 60_mm}, other}},
              testing::fonts());
        CHECK(own->scales[0].value == doctest::Approx(1.0));
        CHECK(own->scales[1].value >= before);
        CHECK(other.scales[1].value >= own->scales[1].value);
        gained |= own->scales[1].value > before;
    }
    CHECK(gained);
}

TEST_CASE_FIXTURE(GroupFixture,
                  "a crowded print does not make the last group small on all others") {
    const auto agreed = [this](std::vector<double> last) {
        std::vector<Sizing> sizings;
        for (const double scale : last) {
            sizings.push_back(sizing_at({2.0}, 0));
            sizings.back().scales[1] = {scale};
        }
        std::vector<SizedPrint> prints;
        for (auto& sizing : sizings) {
            prints.push_back({layout, contents, {90_mm, 60_mm}, sizing});
        }
        agree(prints, testing::fonts());
        for (std::size_t i = 0; i < last.size(); ++i) {
            last[i] = sizings[i].scales[1].value;
        }
        return last;
    };
    using Scales = std::vector<double>;
    CHECK(agreed({1.9, 1.0, 1.6, 1.05}) == Scales{1.6, 1.0, 1.6, 1.0});
    CHECK(agreed({1.9, 1.7, 1.75}) == Scales{1.7, 1.7, 1.7}); // nobody sees that difference
    CHECK(agreed({0.25, 1.0, 0.5, 2.0}) == Scales{0.25, 1.0, 0.25, 2.0});
    CHECK(agreed({1.25}) == Scales{1.25});
}

TEST_CASE("what is too wide alone becomes smaller, not what stands behind it") {
    const auto layout = testing::layout_from(R"(
print = "bag label"
picture = ["dish", "use-by", "cook", "place"]
columns = ["share"]
groups = ["identity", "facts", "body"]
[area]
dish   = { words = "dish", group = "identity", x_height = ["1.8 mm", "2.4 mm", "3.4 mm"] }
use-by = { words = "use-by", group = "facts", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
cook   = { words = "cook", group = "body", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"] }
place  = { words = "place", group = "body", x_height = ["1.2 mm", "1.4 mm", "1.7 mm"], drop = 1 }
)");
    wording::Print print;
    print.fields = {testing::field("dish", {"Stew"}),
                    testing::field("use-by", {"Bestifusedbyseventeenthofdecemberatnoon"}),
                    testing::field("cook", {"Cook it"}), testing::field("place", {"Top shelf"})};
    const auto contents = testing::shaped(print, layout);
    const auto sizes = solve(layout, contents, {50_mm, 100_mm}, testing::fonts());
    REQUIRE(sizes.has_value());
    CHECK(sizes->scales[0].value == doctest::Approx(1.0));
    CHECK(sizes->scales[1].value < 1.0); // else it would not be too wide
    CHECK(sizes->scales[2].value == doctest::Approx(1.0));
    const auto arrangement = arrange(layout, contents, {50_mm, 100_mm}, *sizes, testing::fonts());
    CHECK(arrangement.areas.back().shown);
}

TEST_CASE(
    "a name takes a second line to grow only where what stands behind it needs the room no more") {
    const auto layout = testing::layout_from(R"(
print = "bag label"
picture = ["dish", "cook"]
columns = ["share"]
groups = ["identity", "body"]
[area]
dish = { words = "dish", group = "identity", x_height = ["1.8 mm", "2.4 mm", "5 mm"] }
cook = { words = "cook", group = "body", x_height = ["1.2 mm", "1.4 mm", "2.8 mm"] }
)");
    wording::Print print;
    print.fields = {
        testing::field("dish", {"Quince and celeriac hotpot"}),
        testing::field("cook", {"In the oven until the crumbs are brown and it bubbles"})};
    const auto contents = testing::shaped(print, layout);
    const auto in = [&](Length height) {
        const Size room{60_mm, height};
        const auto sizes = solve(layout, contents, room, testing::fonts());
        REQUIRE(sizes.has_value());
        const auto arrangement = arrange(layout, contents, room, *sizes, testing::fonts());
        const auto& dish = arrangement.areas.front();
        return std::pair{std::lround(dish.place.size.height / dish.type.leading),
                         sizes->scales[1].value};
    };
    const auto [lines_of_low, body_of_low] = in(21_mm); // two lines of the name would fit as well
    CHECK(lines_of_low == 1);
    CHECK(body_of_low > 1.0);
    const auto [lines_of_high, body_of_high] = in(60_mm);
    CHECK(lines_of_high > 1);
    CHECK(body_of_high == doctest::Approx(2.0)); // which is all that it wants
}

} // namespace solve_test

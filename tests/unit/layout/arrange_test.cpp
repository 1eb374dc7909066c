#include "labels.h"
#include "layout/arrange.h"

#include <cmath>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;

namespace {

struct Fixture {
    wording::Print print = testing::small_label();
    Layout layout = testing::layout_from(testing::small_layout);
    Contents contents = testing::shaped(print, layout);

    Arrangement at(double scale, Size room) const {
        return arrange(layout, contents, room, {{scale}, 0}, testing::fonts());
    }
    std::size_t index(const char* name) const {
        return static_cast<std::size_t>(layout.area(name) - layout.areas.data());
    }
};

/// The box of a set item: a text's from ascent to descent of its line.
Rect box_of(const Item& item) {
    if (const auto* text = std::get_if<Text>(&item)) {
        return {{text->baseline.x, text->baseline.y - text->size * 0.7},
                {text->size * text->run.width(), text->size * 0.9}};
    }
    return std::get<Outline>(item).area;
}

} // namespace

TEST_CASE_FIXTURE(Fixture, "areas lie inside the room and never overlap") {
    const Size room{90_mm, 60_mm};
    const auto arrangement = at(1.0, room);
    REQUIRE(arrangement.fits());
    const Rect all{{0_mm, 0_mm}, room};
    for (std::size_t i = 0; i < arrangement.areas.size(); ++i) {
        CHECK(all.contains(arrangement.areas[i].room));
        CHECK(arrangement.areas[i].room.contains(arrangement.areas[i].place));
        for (std::size_t j = i + 1; j < arrangement.areas.size(); ++j) {
            CHECK_FALSE(arrangement.areas[i].room.overlaps(arrangement.areas[j].room));
        }
    }
}

TEST_CASE_FIXTURE(Fixture, "every glyph of an area is drawn inside its room") {
    const auto arrangement = at(1.5, {90_mm, 80_mm});
    REQUIRE(arrangement.fits());
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        const auto& placed = arrangement.areas[i];
        const auto items = draw(contents[i], layout.areas[i], placed.type, placed.place);
        CHECK_FALSE(items.empty());
        for (const auto& item : items) {
            CHECK(placed.room.contains(box_of(item), 0.01_mm));
        }
    }
}

TEST_CASE_FIXTURE(Fixture, "neighbours that start in one row share their first baseline") {
    std::get<TextArea>(layout.areas[index("use-by")].kind).x_height = {2.0_mm, 2.5_mm, 3.0_mm};
    const auto arrangement = at(1.0, {120_mm, 60_mm});
    const auto baseline = [&](const char* name) {
        const auto i = index(name);
        const auto items = draw(contents[i], layout.areas[i], arrangement.areas[i].type,
                                arrangement.areas[i].place);
        return std::get<Text>(items.front()).baseline.y;
    };
    CHECK(std::abs((baseline("made") - baseline("use-by")).in_points()) < 1e-9);
}

TEST_CASE_FIXTURE(Fixture, "a gap with a rule has the room that is wanted on both sides of it") {
    const Size room{90_mm, 60_mm};
    layout.rule_gap = 4_mm;
    const auto arrangement = at(1.0, room);
    REQUIRE(arrangement.rules.size() == 1);
    const auto& rule = arrangement.rules.front();
    const auto above = rule.top() - arrangement.areas[index("dish")].room.bottom();
    CHECK(above.in_millimetres() >= 4.0 - 1e-9);
}

TEST_CASE_FIXTURE(Fixture,
                  "a rule stands in the gap under its area and touches neither neighbour") {
    const auto arrangement = at(1.0, {90_mm, 60_mm});
    REQUIRE(arrangement.rules.size() == 1);
    const auto& rule = arrangement.rules.front();
    CHECK(rule.top() > arrangement.areas[index("dish")].room.bottom());
    CHECK(rule.bottom() < arrangement.areas[index("made")].room.top());
    CHECK(std::abs((rule.size.height - 0.8_pt).in_points()) < 1e-9);
}

TEST_CASE_FIXTURE(Fixture, "an area without words leaves no hole") {
    print.fields.pop_back(); // the note, whose row is the last
    contents = testing::shaped(print, layout);
    const auto with_cook_only = at(1.0, {90_mm, 60_mm});
    CHECK_FALSE(with_cook_only.areas[index("note")].shown);
    print.fields.erase(print.fields.begin() + 4); // finish, in the middle
    contents = testing::shaped(print, layout);
    const auto arrangement = at(1.0, {90_mm, 60_mm});
    const auto& thaw = arrangement.areas[index("thaw")].room;
    const auto& cook = arrangement.areas[index("cook")].room;
    CHECK(cook.top() - thaw.bottom() <= 2_mm + 0.001_mm); // one gap, at most doubled
}

TEST_CASE("a given width in which nothing begins is left to the columns that share") {
    const auto width_of_dish = [](const std::string& columns, bool has_code) {
        const auto layout = testing::layout_from(
            "print = \"bag label\"\npicture = [\"dish dish code\", \"made use-by code\"]\n"
            "columns = " +
            columns + R"(
column_gap = "3 mm"
[area]
dish   = { words = "dish", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
made   = { words = "made", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
use-by = { words = "use-by", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
code   = { kind = "code" }
)");
        auto print = testing::small_label();
        print.has_code = has_code;
        const auto contents = testing::shaped(print, layout);
        const auto arrangement =
            arrange(layout, contents, {100_mm, 60_mm}, {{1.0}, 0}, testing::fonts());
        return arrangement.areas[0].room.size.width.in_millimetres();
    };
    const std::string shared = R"(["content", "share", "30 %"])";
    CHECK(width_of_dish(shared, true) == doctest::Approx(67.0));
    CHECK(width_of_dish(shared, false) == doctest::Approx(100.0));
    // Nobody would take what is left: the drawing stays as it is.
    const std::string given = R"(["30 mm", "30 mm", "34 mm"])";
    CHECK(width_of_dish(given, true) == doctest::Approx(63.0));
    CHECK(width_of_dish(given, false) == doctest::Approx(63.0));
}

TEST_CASE("a given width in which no area ever begins is a gap that was drawn") {
    const auto layout = testing::layout_from(R"(
print = "bag label"
picture = ["dish . made"]
columns = ["share", "10 mm", "20 mm"]
column_gap = "1 mm"
[area]
dish = { words = "dish", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
made = { words = "made", x_height = ["1.2 mm", "1.5 mm", "1.9 mm"] }
)");
    const auto contents = testing::shaped(testing::small_label(), layout);
    const auto arrangement =
        arrange(layout, contents, {100_mm, 60_mm}, {{1.0}, 0}, testing::fonts());
    CHECK(arrangement.areas[0].room.size.width.in_millimetres() == doctest::Approx(68.0));
}

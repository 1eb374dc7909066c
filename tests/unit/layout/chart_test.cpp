// A time chart is drawn to scale, with all its words, none over another.

#include "frames.h"
#include "labels.h"
#include "layout/areas/chart_area.h"

#include <chrono>

using namespace thawslip;
using namespace thawslip::layout;
using namespace thawslip::literals;
using namespace std::chrono_literals;
using wording::TimeChart;

namespace {

wording::Paragraph said(const std::string& text, wording::Marker marker = {}) {
    return {marker, 0, "", {{text, {}}}};
}

TimeChart::Moment moment(TimeChart::Minutes at, const std::string& text) {
    return {at, {said(text, wording::Marker::TickBox), said("more of " + text)}};
}

TimeChart::Stretch stretch(TimeChart::Minutes from, TimeChart::Minutes to, TimeChart::Minutes step,
                           const std::string& name) {
    TimeChart::Stretch made{from, to, {}, {{step, name + " fine"}, {step * 4, name + " coarse"}}};
    for (auto at = from; at <= to; at += step) {
        made.ticks.push_back(
            {at, (at - from) % (step * 4) == 0min ? step * 4 : step, std::to_string(at.count())});
    }
    return made;
}

/// Two lanes over two days and four hours: one crowded at its end, one with a single moment.
TimeChart two_lanes() {
    TimeChart chart;
    chart.stretches = {stretch(0min, 48h, 3h, "days"), stretch(48h, 52h, 5min, "hours")};
    chart.lanes = {{{said("First")},
                    {{TimeChart::Fill::Hatched, 2h, 49h}, {TimeChart::Fill::Solid, 49h, 52h}},
                    {moment(2h, "thaw"), moment(49h, "start"), moment(51h + 50min, "spinach"),
                     moment(51h + 55min, "cream"), moment(52h, "done")}},
                   {{said("Second")},
                    {{TimeChart::Fill::Empty, 50h, 51h}, {TimeChart::Fill::Solid, 51h, 52h}},
                    {moment(50h, "soak"), moment(50h, "salt"), moment(50h + 5min, "boil")}}};
    chart.keys = {{TimeChart::Fill::Hatched, "thaws"}, {TimeChart::Fill::Solid, "cooks"}};
    return chart;
}

const Layout& chart_layout() {
    static const auto layout = testing::layout_from(R"(
print = "plan sheet"
picture = ["lanes"]
[area]
lanes = { kind = "chart", words = "lanes", x_height = ["1.3 mm", "1.7 mm", "2.3 mm"] }
)");
    return layout;
}

constexpr Rect whole{{10_mm, 10_mm}, {170_mm, 220_mm}};

/// The chart as it is drawn at a scale.
Frame drawn(const TimeChart& chart, Rect place = whole, Scale scale = {1.0}) {
    wording::Print print;
    print.kind = wording::Kind::PlanSheet;
    print.chart = std::make_shared<const TimeChart>(chart);
    const auto contents = testing::shaped(print, chart_layout());
    const auto& area = chart_layout().areas.front();
    const auto type = type_at(area, scale, testing::fonts());
    CHECK(measure(contents.front(), area, type, place.size.width).height <= place.size.height);
    return {{190_mm, 240_mm}, {}, draw(contents.front(), area, type, place)};
}

/// The baseline of the line that begins with these words.
Length baseline_of(const Frame& frame, const std::string& words) {
    for (const auto& text : items_of<Text>(frame)) {
        if (text.run.text.starts_with(words)) {
            return text.baseline.y;
        }
    }
    FAIL("not drawn: " << words);
    return {};
}

/// The solid bars, from the left.
std::vector<Rect> bars(const Frame& frame) {
    std::vector<Rect> found;
    for (const auto& rule : items_of<Rule>(frame)) {
        if (rule.area.size.width > 2_mm && rule.area.size.height > 8_mm) {
            found.push_back(rule.area);
        }
    }
    return found;
}

/// The body of a text's letters: what must not lie on another's.
Rect body(const Text& text) {
    return {{text.baseline.x, text.baseline.y - text.size * 0.6},
            {text.size * text.run.width(), text.size * 0.7}};
}

bool cross(const Rect& across, const Rect& down) {
    const Length hair = 1_pt;                   // ends that meet do not cross
    const bool is_bar = down.size.width > hair; // the mark of a moment goes across its bar
    return !is_bar && across.size.width > across.size.height &&
           across.left() < down.left() - hair && across.right() > down.right() + hair &&
           down.top() < across.top() - hair && down.bottom() > across.bottom() + hair;
}

} // namespace

TEST_CASE("what lasts twice as long is drawn twice as high, in each stretch by itself") {
    const auto frame = drawn(two_lanes());
    const auto solid = bars(frame);
    REQUIRE(solid.size() == 2);
    CHECK(solid[0].size.height / solid[1].size.height == doctest::Approx(3.0));
    CHECK(solid[0].bottom().in_points() == doctest::Approx(solid[1].bottom().in_points()));
    std::vector<Length> hatched; // one drawn in both stretches
    for (const auto& outline : items_of<Outline>(frame)) {
        if (outline.area.size.height > 8_mm) {
            hatched.push_back(outline.area.size.height);
        }
    }
    REQUIRE(hatched.size() == 3); // two of the first lane, the empty one of the second
    CHECK(hatched[1] / hatched[2] == doctest::Approx(1.0)); // an hour each
    const Length hour = solid[1].size.height;
    CHECK(hour > hatched[0] / 46.0 * 2); // the last hours are the larger ones
}

TEST_CASE("the scale's marks stand at their times, and its words say how far apart they are") {
    const auto frame = drawn(two_lanes());
    const auto day = baseline_of(frame, "720") - baseline_of(frame, "0");
    CHECK((baseline_of(frame, "2160") - baseline_of(frame, "1440")) / day == doctest::Approx(1.0));
    const auto hour = baseline_of(frame, "3000") - baseline_of(frame, "2940");
    CHECK(hour / bars(frame)[1].size.height == doctest::Approx(1.0));
    CHECK(has_line(frame, "days fine"));
    CHECK(has_line(frame, "hours fine"));
    const auto low = drawn(two_lanes(), {{10_mm, 10_mm}, {170_mm, 105_mm}}, {0.0});
    CHECK(has_line(low, "hours coarse"));
}

TEST_CASE("every moment is drawn with its box, in the order of time") {
    const auto frame = drawn(two_lanes());
    for (const auto& lane : two_lanes().lanes) {
        Length before;
        CHECK(baseline_of(frame, lane.head.front().spans.front().text) > Length{});
        for (const auto& moment : lane.moments) {
            const auto baseline = baseline_of(frame, moment.words.front().spans.front().text);
            CHECK(baseline > before);
            before = baseline;
            CHECK(baseline_of(frame, moment.words.back().spans.front().text) > baseline);
        }
    }
    const auto boxes = std::ranges::count_if(items_of<Outline>(frame), [](const Outline& outline) {
        return outline.area.size.width == outline.area.size.height;
    });
    CHECK(boxes == 8);
    CHECK(has_line(frame, "thawscooks"));
}

TEST_CASE("no words lie on others, nothing leaves its place, no leader crosses another") {
    for (const double scale : {0.0, 1.0, 1.4}) {
        CAPTURE(scale);
        const auto frame = drawn(two_lanes(), whole, {scale});
        const auto texts = items_of<Text>(frame);
        for (std::size_t i = 0; i < texts.size(); ++i) {
            CHECK(whole.contains(body(texts[i]), 0.5_mm));
            for (std::size_t j = 0; j < i; ++j) {
                CAPTURE(texts[i].run.text);
                CAPTURE(texts[j].run.text);
                CHECK_FALSE(body(texts[i]).overlaps(body(texts[j])));
            }
        }
        const auto rules = items_of<Rule>(frame);
        for (const auto& across : rules) {
            CHECK(whole.contains(across.area, 0.5_mm));
            for (const auto& down : rules) {
                CHECK_FALSE(cross(across.area, down.area));
            }
        }
    }
}

TEST_CASE("a chart whose lanes have nothing to do shows their heads alone") {
    TimeChart chart;
    chart.lanes = {{{said("Too late")}, {}, {}}};
    const auto frame = drawn(chart);
    CHECK(lines_of(frame) == std::vector<std::string>{"Too late"});
    CHECK(items_of<Rule>(frame).empty());
}

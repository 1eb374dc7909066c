#include "layout/areas/chart_places.h"
#include "layout/areas/entry.h"
#include "layout/areas/spread.h"

#include <algorithm>
#include <cmath>

namespace thawslip::layout {
namespace {

using wording::TimeChart;
using Minutes = TimeChart::Minutes;

constexpr double hatching = 0.3;      // sizes of type between two lines of a hatched span
constexpr double half_x = 0.27;       // sizes of type from the baseline to the middle of an x
constexpr double words_apart = 1.2;   // leadings between two marks with words
constexpr double marks_apart = 0.4;   // leadings between two marks
constexpr double beside_left = 0.36;  // sizes of type from a bar to the thin one beside it
constexpr double beside_width = 0.24; // sizes of type
constexpr double channel = 0.3;       // sizes of type between two leaders beside each other
constexpr int most_channels = 4;

/// Draws one chart, from its head down to its key.
class Drawing {
public:
    Drawing(const PreparedChart& chart, const TextArea& area, TypeSize type, Rect place)
        : chart_{chart}, area_{area}, type_{type}, place_{place}, needs_{chart, area, type,
                                                                         place.size.width} {}

    std::vector<Item> draw() {
        Length y = place_.top();
        for (std::size_t i = 0; i < chart_.lanes.size(); ++i) {
            words(chart_.lanes[i].head, {lane_left(i), y}, needs_.lane_width());
        }
        y += needs_.head();
        for (std::size_t i = 0; i < chart_.stretches.size(); ++i) {
            y = draw_stretch(i, y);
        }
        draw_keys();
        return std::move(items_);
    }

private:
    Length em(double sizes) const { return type_.size * sizes; }
    Length lane_left(std::size_t lane) const { return place_.left() + needs_.lane_left(lane); }

    void words(const Content& content, Point top_left, Length width) {
        for (auto& item : layout::draw(content, area_, type_, {top_left, {width, {}}}, Ink{})) {
            items_.push_back(std::move(item));
        }
    }

    void rule(Length left, Length top, Length width, Length height) {
        items_.push_back(Rule{{{left, top}, {width, height}}});
    }

    void rule_across(Length from, Length to, Length y) {
        rule(from, y - thinnest_line / 2, to - from, thinnest_line);
    }

    void rule_down(Length x, Length from, Length to) {
        rule(x - thinnest_line / 2, std::min(from, to) - thinnest_line / 2, thinnest_line,
             std::max(from, to) - std::min(from, to) + thinnest_line);
    }

    /// The height of a stretch: what it needs, and its part of what is left, for the scale of the
    /// one with more to say is the larger.
    Length height_of(std::size_t stretch) const {
        Length all;
        for (std::size_t i = 0; i < chart_.stretches.size(); ++i) {
            all += needs_.stretch(i);
        }
        const Length spare = std::max(place_.size.height - needs_.height(), Length{});
        return needs_.stretch(stretch) + spare * (needs_.stretch(stretch) / all);
    }

    /// \returns where it ends
    Length draw_stretch(std::size_t i, Length y) {
        const auto& time = chart_.stretches[i];
        const Length top = y + needs_.gap() * 1.5 + needs_.caption(i);
        const DrawnStretch stretch{&time, top, top + height_of(i)};
        rule_across(place_.left(), place_.right(), y + needs_.gap() / 2);
        const auto step = step_for(stretch, type_.leading * marks_apart);
        const auto caption = std::ranges::find(time.captions, step, &PreparedChart::Caption::step);
        words(caption->words, {place_.left(), y + needs_.gap()}, place_.size.width);
        draw_scale(stretch, step);
        for (std::size_t lane = 0; lane < chart_.lanes.size(); ++lane) {
            draw_lane(lane, i, stretch);
        }
        return stretch.bottom + needs_.gap() / 2;
    }

    void draw_scale(const DrawnStretch& stretch, Minutes step) {
        const Length x = place_.left() + needs_.axis_width();
        rule_down(x, stretch.top, stretch.bottom);
        const auto worded = step_for(stretch, type_.leading * words_apart);
        for (const auto& tick : stretch.time->ticks) {
            if (tick.step < step) {
                continue;
            }
            const Length y = stretch.y_of(tick.at);
            const bool has_words = tick.step >= worded;
            rule_across(x - em(has_words ? tick_length : tick_length / 2), x, y);
            if (has_words) {
                const Length wide = natural_width(tick.label, area_, type_);
                words(tick.label, {x - em(tick_length + 0.25) - wide, top_of_words(y)},
                      wide + em(1));
            }
            for (std::size_t lane = 1; has_words && lane < chart_.lanes.size(); ++lane) {
                const Length line = lane_left(lane) - em(tick_length);
                rule_across(line - em(tick_length), line, y);
            }
        }
    }

    /// The top of words whose first line is to stand with its middle at `y`.
    Length top_of_words(Length y) const { return y + em(half_x) - type_.leading * baseline_share; }

    void draw_lane(std::size_t lane, std::size_t stretch, const DrawnStretch& drawn) {
        const auto& what = chart_.lanes[lane];
        if (lane > 0) {
            rule_down(lane_left(lane) - em(tick_length), drawn.top, drawn.bottom);
        }
        for (const auto& span : what.spans) {
            const auto from = std::max(span.from, drawn.time->from);
            const auto to = std::min(span.to, drawn.time->to);
            if (from < to) {
                const Length y = drawn.y_of(from);
                draw_bar(span.fill, bar_at(span.fill, lane_left(lane), y, drawn.y_of(to) - y));
            }
        }
        draw_moments(lane, moments_in(what, stretch), drawn);
    }

    std::vector<const PreparedChart::Moment*> moments_in(const PreparedChart::Lane& lane,
                                                         std::size_t stretch) const {
        std::vector<const PreparedChart::Moment*> moments;
        for (const auto& moment : lane.moments) {
            if (stretch_of(moment.at, chart_) == stretch) {
                moments.push_back(&moment);
            }
        }
        return moments;
    }

    /// What goes on beside the dish is a thin bar at the left of its own.
    Rect bar_at(TimeChart::Fill fill, Length left, Length top, Length height) const {
        return fill == TimeChart::Fill::Beside
                   ? Rect{{left - em(beside_left), top}, {em(beside_width), height}}
                   : Rect{{left, top}, {em(bar_width), height}};
    }

    void draw_bar(TimeChart::Fill fill, Rect bar) {
        if (fill == TimeChart::Fill::Solid || fill == TimeChart::Fill::Beside) {
            items_.push_back(Rule{bar});
            return;
        }
        items_.push_back(Outline{bar, thinnest_line, {}});
        const Length apart = em(hatching);
        for (Length y = bar.top() + apart;
             fill == TimeChart::Fill::Hatched && y < bar.bottom() - thinnest_line; y += apart) {
            rule_across(bar.left(), bar.right(), y);
        }
    }

    /// The words of the moments beside the bar, each led to from its time.
    void draw_moments(std::size_t lane, const std::vector<const PreparedChart::Moment*>& moments,
                      const DrawnStretch& drawn) {
        std::vector<Wanted> wanted;
        std::vector<Length> marks;
        for (const auto* moment : moments) {
            marks.push_back(drawn.y_of(moment->at));
            wanted.push_back({top_of_words(marks.back()), needs_.moment_height(*moment)});
        }
        const Length over = type_.leading / 2;
        const auto tops =
            spread(wanted, type_.leading * moment_gap, drawn.top - over, drawn.bottom + over);
        const Length left = lane_left(lane) + em(bar_width + leader_width);
        std::vector<Length> lines; // the middle of each first line
        for (std::size_t i = 0; i < moments.size(); ++i) {
            words(moments[i]->words, {left, tops[i]}, needs_.words_width());
            lines.push_back(tops[i] - top_of_words(Length{}));
        }
        for (std::size_t i = 0; i < moments.size(); ++i) {
            draw_leader(lane, marks[i], lines[i], channel_of(i, marks, lines));
        }
    }

    /// Which way beside the bar a leader takes, so that none crosses another: of those that are led
    /// down, the earlier keep farther from the bar; of those that are led up, the later.
    static int channel_of(std::size_t i, const std::vector<Length>& marks,
                          const std::vector<Length>& lines) {
        int within = 0;
        for (std::size_t j = 0; j < marks.size(); ++j) {
            const bool down = j > i && marks[j] > marks[i] && marks[j] <= lines[i];
            const bool up = j < i && marks[j] < marks[i] && marks[j] >= lines[i];
            within += down || up ? 1 : 0;
        }
        return std::min(within, most_channels - 1);
    }

    void draw_leader(std::size_t lane, Length mark, Length line, int way) {
        const Length bar = lane_left(lane);
        const Length words = bar + em(bar_width + leader_width) - em(0.2);
        const bool is_straight = std::abs((mark - line).in_points()) < em(0.08).in_points();
        const Length turn = bar + em(bar_width + 0.35 + channel * way);
        rule_across(bar - em(0.15), is_straight ? words : turn, mark);
        if (!is_straight) {
            rule_down(turn, mark, line);
            rule_across(turn, words, line);
        }
    }

    void draw_keys() {
        const auto places = key_places(chart_, area_, type_, place_.size.width);
        const Length top = place_.bottom() - needs_.keys();
        for (std::size_t i = 0; i < places.size(); ++i) {
            const Point at{place_.left() + places[i].left, top + type_.leading * places[i].line};
            const Length middle = at.y + type_.leading * baseline_share - em(half_x);
            const auto fill = chart_.keys[i].fill;
            const bool is_thin = fill == TimeChart::Fill::Beside;
            draw_bar(fill, {{at.x, middle - em(0.5)},
                            {em(is_thin ? beside_width : sample_width - 0.6), em(1)}});
            words(chart_.keys[i].words, {at.x + em(sample_width), at.y},
                  natural_width(chart_.keys[i].words, area_, type_) + em(1));
        }
    }

    const PreparedChart& chart_;
    const TextArea& area_;
    TypeSize type_;
    Rect place_;
    ChartNeeds needs_;
    std::vector<Item> items_;
};

} // namespace

std::vector<Item> draw(const Content& content, const ChartArea& area, TypeSize type, Rect place,
                       const Ink& /*ink*/) {
    if (!content.is_there()) {
        return {};
    }
    return Drawing{content.chart(), area.text, type, place}.draw();
}

} // namespace thawslip::layout

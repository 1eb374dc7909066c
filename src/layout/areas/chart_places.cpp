#include "layout/areas/chart_places.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

using Minutes = wording::TimeChart::Minutes;

constexpr double least_stretch = 6.0; // leadings: below that no scale can be read
constexpr double tick_gap = 0.35;     // between the words of a mark and the mark

Length widest_tick(const PreparedChart& chart, const TextArea& area, TypeSize type) {
    Length widest;
    for (const auto& stretch : chart.stretches) {
        for (const auto& tick : stretch.ticks) {
            widest = std::max(widest, natural_width(tick.label, area, type));
        }
    }
    return widest;
}

} // namespace

ChartNeeds::ChartNeeds(const PreparedChart& chart, const TextArea& area, TypeSize type,
                       Length width)
    : chart_{chart}, area_{area}, type_{type} {
    const auto lanes = static_cast<double>(std::max<std::size_t>(chart.lanes.size(), 1));
    if (!chart.stretches.empty()) {
        axis_width_ = widest_tick(chart, area, type) + type.size * (tick_gap + tick_length);
    }
    const Length gaps = type.size * lane_gap * (lanes - 1) + type.size * tick_length;
    lane_width_ = std::max((width - axis_width_ - gaps) / lanes, type.size);
    words_width_ = std::max(lane_width_ - type.size * (bar_width + leader_width), type.size);
    for (const auto& lane : chart.lanes) {
        head_ = std::max(head_, take(lane.head, lane_width_));
    }
    if (!chart.lanes.empty()) {
        first_baseline_ =
            measure(chart.lanes.front().head, area, type, lane_width_, RowHeights::FollowContent)
                .first_baseline.value_or(Length{});
    }
    for (std::size_t i = 0; i < chart.stretches.size(); ++i) {
        Length caption;
        for (const auto& one : chart.stretches[i].captions) {
            caption = std::max(caption, take(one.words, width));
        }
        captions_.push_back(caption);
        Length most = type.leading * least_stretch;
        for (const auto& lane : chart.lanes) {
            most = std::max(most, moments_of(lane, i));
        }
        stretches_.push_back(most);
    }
    const auto places = key_places(chart, area, type, width);
    keys_ = places.empty() ? Length{} : type.leading * (places.back().line + 1);
}

Length ChartNeeds::take(const Content& content, Length width) {
    const auto extent = measure(content, area_, type_, width, RowHeights::FollowContent);
    cut_paragraphs_ += extent.cut_paragraphs;
    return extent.height;
}

Length ChartNeeds::moments_of(const PreparedChart::Lane& lane, std::size_t stretch) {
    Length sum;
    for (const auto& moment : lane.moments) {
        if (stretch_of(moment.at, chart_) == stretch) {
            sum += take(moment.words, words_width_) + type_.leading * moment_gap;
        }
    }
    return sum;
}

Length ChartNeeds::height() const {
    Length sum = head_;
    for (std::size_t i = 0; i < stretches_.size(); ++i) {
        sum += gap() * 2 + captions_[i] + stretches_[i];
    }
    return keys_ > Length{} ? sum + gap() + keys_ : sum;
}

Length ChartNeeds::lane_left(std::size_t lane) const {
    return axis_width_ + type_.size * tick_length +
           (lane_width_ + type_.size * lane_gap) * static_cast<double>(lane);
}

Length ChartNeeds::moment_height(const PreparedChart::Moment& moment) const {
    return measure(moment.words, area_, type_, words_width_, RowHeights::FollowContent).height;
}

std::size_t stretch_of(Minutes at, const PreparedChart& chart) {
    std::size_t found = 0;
    for (std::size_t i = 0; i < chart.stretches.size(); ++i) {
        found = at >= chart.stretches[i].from ? i : found;
    }
    return found;
}

Length DrawnStretch::height_of(Minutes length) const {
    const auto whole = static_cast<double>((time->to - time->from).count());
    return (bottom - top) * (static_cast<double>(length.count()) / whole);
}

Length DrawnStretch::y_of(Minutes at) const {
    return top + height_of(at - time->from);
}

Minutes step_for(const DrawnStretch& stretch, Length least) {
    const auto& steps = stretch.time->captions;
    const auto found = std::ranges::find_if(
        steps, [&](const auto& one) { return stretch.height_of(one.step) >= least; });
    return found != steps.end() ? found->step : steps.back().step;
}

std::vector<KeyPlace> key_places(const PreparedChart& chart, const TextArea& area, TypeSize type,
                                 Length width) {
    std::vector<KeyPlace> places;
    Length x;
    int line = 0;
    for (const auto& key : chart.keys) {
        const Length wide = type.size * sample_width + natural_width(key.words, area, type);
        if (x > Length{} && x + wide > width) {
            x = {};
            ++line;
        }
        places.push_back({x, line});
        x += wide + type.size * key_gap;
    }
    return places;
}

} // namespace thawslip::layout

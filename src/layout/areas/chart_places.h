#pragma once

#include "layout/areas/chart_area.h"

#include <optional>
#include <vector>

namespace thawslip::layout {

// Where the parts of a chart stand. All measures of the drawing itself are in sizes of its type.

inline constexpr double lane_gap = 1.6;     ///< between lanes
inline constexpr double bar_width = 1.1;    ///< of the bar that shows what goes on
inline constexpr double leader_width = 1.7; ///< between the bar and the words of its moments
inline constexpr double tick_length = 0.45; ///< of a mark with words; one without is half as long
inline constexpr double moment_gap = 0.35;  ///< between the words of two moments, in leadings
inline constexpr double part_gap = 1.0;     ///< between head, stretches and key, in leadings

/// What a chart needs at one type and width.
class ChartNeeds {
public:
    ChartNeeds(const PreparedChart& chart, const TextArea& area, TypeSize type, Length width);

    /// The least height at which all words have room.
    Length height() const;
    Length first_baseline() const { return first_baseline_; }
    int cut_paragraphs() const { return cut_paragraphs_; }

    Length axis_width() const { return axis_width_; } ///< of the scale at the left
    Length lane_width() const { return lane_width_; }
    Length words_width() const { return words_width_; } ///< of the words of a moment
    Length lane_left(std::size_t lane) const;           ///< from the chart's left edge
    Length head() const { return head_; }
    Length caption(std::size_t stretch) const { return captions_[stretch]; }
    Length stretch(std::size_t stretch) const { return stretches_[stretch]; }
    Length keys() const { return keys_; }
    Length gap() const { return type_.leading * part_gap; }

    /// How high the words of a moment are.
    Length moment_height(const PreparedChart::Moment& moment) const;

private:
    Length take(const Content& content, Length width);
    Length moments_of(const PreparedChart::Lane& lane, std::size_t stretch);

    const PreparedChart& chart_;
    const TextArea& area_;
    TypeSize type_;
    Length axis_width_;
    Length lane_width_;
    Length words_width_;
    Length head_;
    Length keys_;
    std::vector<Length> captions_;
    std::vector<Length> stretches_;
    Length first_baseline_;
    int cut_paragraphs_ = 0;
};

/// In which stretch a moment is drawn: of two that meet there, the later.
std::size_t stretch_of(wording::TimeChart::Minutes at, const PreparedChart& chart);

/// A stretch as it is drawn: where it begins and ends on paper.
struct DrawnStretch {
    const PreparedChart::Stretch* time = nullptr;
    Length top;
    Length bottom;

    /// Where a time of the stretch stands: what lasts twice as long is twice as high.
    Length y_of(wording::TimeChart::Minutes at) const;
    /// How high a length of time is.
    Length height_of(wording::TimeChart::Minutes time) const;
};

/// The shortest of the steps by which captions tell marks apart at which the marks of a stretch are
/// `least` apart; the longest where none is.
wording::TimeChart::Minutes step_for(const DrawnStretch& stretch, Length least);

/// How far the words of the keys reach, each after the other in lines of `width`.
struct KeyPlace {
    Length left; ///< of its sample, from the chart's left edge
    int line = 0;
};
std::vector<KeyPlace> key_places(const PreparedChart& chart, const TextArea& area, TypeSize type,
                                 Length width);

inline constexpr double sample_width = 2.2; ///< of the sample beside a key's words, with its gap
inline constexpr double key_gap = 1.6;      ///< between two keys

} // namespace thawslip::layout

#pragma once

#include "layout/areas/text_area.h"
#include "wording/time_chart.h"

#include <vector>

namespace thawslip::layout {

/// A time chart, drawn to scale: lanes side by side, time from top to bottom. It has the keys of an
/// area with words, for that is how its words are set; it takes all the height there is.
struct ChartArea {
    TextArea text;
};

/// A time chart with its words shaped.
struct PreparedChart {
    struct Moment {
        wording::TimeChart::Minutes at{0};
        Content words;
    };
    struct Lane {
        Content head;
        std::vector<wording::TimeChart::Span> spans;
        std::vector<Moment> moments;
    };
    struct Tick {
        wording::TimeChart::Minutes at{0};
        wording::TimeChart::Minutes step{0};
        Content label;
    };
    struct Caption {
        wording::TimeChart::Minutes step{0};
        Content words;
    };
    struct Stretch {
        wording::TimeChart::Minutes from{0};
        wording::TimeChart::Minutes to{0};
        std::vector<Tick> ticks;
        std::vector<Caption> captions;
    };
    struct Key {
        wording::TimeChart::Fill fill = wording::TimeChart::Fill::Empty;
        Content words;
    };
    std::vector<Lane> lanes;
    std::vector<Stretch> stretches;
    std::vector<Key> keys;
};

// What every kind of area answers; see area.h.
void read(toml::Table& table, const PrintFields& fields, ChartArea& area);
Result<Content, ContentFault> prepare(const ChartArea& area, const wording::Print& print,
                                      Shaper& shaper);
Length natural_width(const Content& content, const ChartArea& area, TypeSize type);
Extent measure(const Content& content, const ChartArea& area, TypeSize type, Length width,
               RowHeights rows);
std::vector<Item> draw(const Content& content, const ChartArea& area, TypeSize type, Rect place,
                       const Ink& ink);

} // namespace thawslip::layout

#pragma once

#include "wording/print.h"

#include <chrono>
#include <string>
#include <vector>

namespace thawslip::wording {

/// A timeline that is to be drawn to scale: lanes side by side, each with what goes on for how long
/// and what is said at which moment. All times are minutes from the begin of the first stretch, and
/// nothing is known of paper: a sheet and a page on a screen draw the same one.
struct TimeChart {
    using Minutes = std::chrono::minutes;

    /// How a span is filled: three that nobody takes for another in black and white; and a thin
    /// one, which stands beside the others and may overlap them.
    enum class Fill { Hatched, Empty, Solid, Beside };

    struct Span {
        Fill fill = Fill::Empty;
        Minutes from{0};
        Minutes to{0};
    };

    struct Moment {
        Minutes at{0};
        std::vector<Paragraph> words; ///< the first with its box and what the clock shows
    };

    struct Lane {
        std::vector<Paragraph> head; ///< whose lane it is, and what is to be said before all else
        std::vector<Span> spans;
        std::vector<Moment> moments; ///< in order of time
    };

    /// A round time of the clock.
    struct Tick {
        Minutes at{0};
        Minutes step{0};   ///< the longest round step that falls on it
        std::string label; ///< "18:00"; at midnight the day
    };

    /// A length of time drawn to one scale.
    struct Stretch {
        Minutes from{0};
        Minutes to{0};
        std::vector<Tick> ticks;
        /// What is written above it, by the step of the marks that there is room for.
        struct Caption {
            Minutes step{0};
            std::string text;
        };
        std::vector<Caption> captions; ///< from the shortest step to the longest
    };

    /// What a filling means.
    struct Key {
        Fill fill = Fill::Empty;
        std::string text;
    };

    std::vector<Lane> lanes;
    std::vector<Stretch> stretches; ///< each begins where the one before ends
    std::vector<Key> keys;          ///< of the fillings that occur
};

} // namespace thawslip::wording

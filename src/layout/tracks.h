#pragma once

#include "base/geometry.h"

#include <vector>

namespace thawslip::layout {

/// How wide a column or how high a row is. After W3C CSS Grid Layout Module Level 1, 7.2:
/// a fixed length, a percentage of the whole, the size of the content, or a share of what is left.
struct Track {
    enum class Kind { Fixed, Percent, Content, Share };
    Kind kind = Kind::Content;
    Length length;       ///< for Fixed
    double amount = 1.0; ///< percent, or number of shares
    friend bool operator==(const Track&, const Track&) = default;
};

/// That `count` tracks from `first` on must together be at least `need` long, gaps included.
struct SpanNeed {
    int first = 0;
    int count = 1;
    Length need;
};

/// Columns or rows at their places. A content row that nothing needs has no length, and no gap
/// goes with it.
struct Bands {
    std::vector<Length> start;
    std::vector<Length> length;
    std::vector<Length> begin; ///< of what begins in a track: `start`, but see RowGap::lined
    Length overflow; ///< by how much they are longer than the room; negative: what is to spare

    Length start_of(int track) const { return begin[static_cast<std::size_t>(track)]; }
    /// From the start of track `first` to the end of the last of `count`.
    Length span(int first, int count) const;
    /// The room between a track and what stands before it; 0 for the first and past the last.
    Length gap_before(int track) const;
};

/// The gap between rows.
struct RowGap {
    Length least;
    Length most;
    /// Which gaps take what is to spare, by the row below; empty: all.
    std::vector<bool> grows = {};
    /// How much those with a rule must at least have, by the row below; else 0.
    std::vector<Length> ruled = {};
    /// Which have a rule, by the row below: a code that begins in a row that is not there is not to
    /// have one in its quiet zone.
    std::vector<bool> lined = {};
};

/// Column widths: fixed and percent as they say, content as wide as its widest need, shares of
/// what is left. Needs of several columns are ignored: words can wrap.
Bands resolve_columns(const std::vector<Track>& tracks, Length gap, Length room,
                      const std::vector<SpanNeed>& needs);

/// Row heights: as columns, but a need of several rows makes its share rows grow or, where it has
/// none, its content rows evenly. What is to spare goes evenly into the gaps that grow, up to the
/// most they may be, then to share rows; without any it stays below.
Bands resolve_rows(const std::vector<Track>& tracks, const RowGap& gap, Length room,
                   const std::vector<SpanNeed>& needs);

} // namespace thawslip::layout

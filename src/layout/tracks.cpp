#include "layout/tracks.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

std::size_t at(int track) {
    return static_cast<std::size_t>(track);
}

/// Lengths and gaps while they are being worked out.
struct Draft {
    const std::vector<Track>& tracks;
    Length gap;
    std::vector<Length> length;
    std::vector<Length> ruled = {}; ///< least gaps of their own; see RowGap
    std::vector<bool> lined = {};   ///< see RowGap

    /// A content row that nothing needs is not there; a share row always is, for it may get a
    /// length at the very end.
    bool stands(std::size_t track) const {
        return length[track] > Length{} || tracks[track].kind == Track::Kind::Share;
    }

    /// The first of the tracks that are not there right above one; itself, if there is none.
    std::size_t first_missing_above(std::size_t track) const {
        while (track > 0 && !stands(track - 1)) {
            --track;
        }
        return track;
    }

    /// A gap stands before every track that stands, but the first of them.
    Length gap_before(std::size_t track) const {
        const auto above = first_missing_above(track);
        return stands(track) && above > 0 ? least_gap(above, track) : Length{};
    }

    /// The least gap between the tracks from `first` on and `last`: rows that are not there leave
    /// their rule's distance behind.
    Length least_gap(std::size_t first, std::size_t last) const {
        Length least = gap;
        for (std::size_t i = first; i <= last && i < ruled.size(); ++i) {
            least = std::max(least, ruled[i]);
        }
        return least;
    }

    /// Whether a track is not there, and there is a rule in the gap in which it would be: what
    /// begins in it begins behind that gap.
    bool begins_behind_rule(std::size_t track) const {
        if (stands(track)) {
            return false;
        }
        auto next = track;
        while (next + 1 < length.size() && !stands(next)) {
            ++next;
        }
        bool has_rule = false;
        for (auto i = first_missing_above(track); i <= next && i < lined.size(); ++i) {
            has_rule = has_rule || lined[i];
        }
        return has_rule;
    }

    Length total() const {
        Length sum;
        for (std::size_t i = 0; i < length.size(); ++i) {
            sum += length[i] + gap_before(i);
        }
        return sum;
    }

    Length span(const SpanNeed& need) const {
        Length sum;
        bool is_begun = !begins_behind_rule(at(need.first));
        for (std::size_t i = at(need.first); i < at(need.first + need.count); ++i) {
            sum += length[i] + (is_begun && i > at(need.first) ? gap_before(i) : Length{});
            is_begun = is_begun || stands(i);
        }
        return sum;
    }

    /// Whether the gap before a track takes what is to spare: its own is meant, or that of a row
    /// above it that is not there.
    bool grows(std::size_t track, const std::vector<bool>& growing) const {
        bool meant = growing.empty();
        for (auto i = first_missing_above(track); i <= track && !meant; ++i) {
            meant = growing[i];
        }
        return meant && gap_before(track) > Length{};
    }

    int count_growing(const std::vector<bool>& growing) const {
        int count = 0;
        for (std::size_t i = 0; i < length.size(); ++i) {
            count += grows(i, growing) ? 1 : 0;
        }
        return count;
    }

    double shares() const {
        double sum = 0.0;
        for (const auto& track : tracks) {
            sum += track.kind == Track::Kind::Share ? track.amount : 0.0;
        }
        return sum;
    }
};

Draft given_lengths(const std::vector<Track>& tracks, Length gap, Length room) {
    Draft draft{tracks, gap, std::vector<Length>(tracks.size()), {}};
    for (std::size_t i = 0; i < tracks.size(); ++i) {
        if (tracks[i].kind == Track::Kind::Fixed) {
            draft.length[i] = tracks[i].length;
        } else if (tracks[i].kind == Track::Kind::Percent) {
            draft.length[i] = room * (tracks[i].amount / 100.0);
        }
    }
    return draft;
}

void grow_single(Draft& draft, const std::vector<SpanNeed>& needs) {
    for (const auto& need : needs) {
        if (need.count == 1 && draft.tracks[at(need.first)].kind == Track::Kind::Content) {
            draft.length[at(need.first)] = std::max(draft.length[at(need.first)], need.need);
        }
    }
}

/// The rows of a need that may grow for it: share rows; else content rows that stand already, for
/// an empty one would bring its gap along; else the last content row.
std::vector<std::size_t> growing_rows(const Draft& draft, const SpanNeed& need) {
    std::vector<std::size_t> shares;
    std::vector<std::size_t> standing;
    std::vector<std::size_t> last;
    for (std::size_t i = at(need.first); i < at(need.first + need.count); ++i) {
        if (draft.tracks[i].kind == Track::Kind::Share) {
            shares.push_back(i);
        } else if (draft.tracks[i].kind == Track::Kind::Content) {
            last = {i};
            if (draft.length[i] > Length{}) {
                standing.push_back(i);
            }
        }
    }
    return !shares.empty() ? shares : !standing.empty() ? standing : last;
}

void grow_spans(Draft& draft, const std::vector<SpanNeed>& needs) {
    auto ordered = needs;
    std::ranges::stable_sort(ordered, {}, &SpanNeed::count);
    for (const auto& need : ordered) {
        const auto growing = growing_rows(draft, need);
        const Length lack = need.need - draft.span(need);
        for (const auto i : growing) {
            draft.length[i] += std::max(lack, Length{}) / static_cast<double>(growing.size());
        }
    }
}

/// By how much fixed rows are too low for what stands in them.
Length squeezed(const Draft& draft, const std::vector<SpanNeed>& needs) {
    Length worst;
    for (const auto& need : needs) {
        worst = std::max(worst, need.need - draft.span(need));
    }
    return worst;
}

Bands placed(const Draft& draft, Length extra_gap, const std::vector<bool>& growing) {
    Bands bands;
    bands.length = draft.length;
    Length edge;
    for (std::size_t i = 0; i < draft.length.size(); ++i) {
        edge += draft.gap_before(i) + (draft.grows(i, growing) ? extra_gap : Length{});
        bands.start.push_back(edge);
        edge += draft.length[i];
    }
    bands.begin = bands.start;
    for (auto i = draft.length.size(); i-- > 1;) {
        if (draft.begins_behind_rule(i - 1)) {
            bands.begin[i - 1] = bands.begin[i];
        }
    }
    return bands;
}

} // namespace

Length Bands::span(int first, int count) const {
    const auto last = at(first + count - 1);
    return std::max(start[last] + length[last] - begin[at(first)], Length{});
}

Length Bands::gap_before(int track) const {
    if (track <= 0 || at(track) >= start.size()) {
        return {};
    }
    // The next track that has a length: empty ones stand where it begins.
    auto next = at(track);
    while (next < start.size() && length[next] <= Length{}) {
        ++next;
    }
    if (next == start.size()) {
        return {};
    }
    return start[next] - (start[at(track - 1)] + length[at(track - 1)]);
}

Bands resolve_columns(const std::vector<Track>& tracks, Length gap, Length room,
                      const std::vector<SpanNeed>& needs) {
    auto draft = given_lengths(tracks, gap, room);
    grow_single(draft, needs);
    const double shares = draft.shares();
    const Length used = draft.total(); // share columns have no width yet, but their gaps
    const Length left = std::max(room - used, Length{});
    for (std::size_t i = 0; i < tracks.size(); ++i) {
        if (tracks[i].kind == Track::Kind::Share) {
            draft.length[i] = left * (tracks[i].amount / shares);
        }
    }
    auto bands = placed(draft, Length{}, {});
    const bool filled = shares > 0.0 && left > Length{};
    const Length lacking = used - room + (shares > 0.0 ? Length::points(1) : Length{});
    bands.overflow = filled ? Length{} : lacking;
    return bands;
}

Bands resolve_rows(const std::vector<Track>& tracks, const RowGap& gap, Length room,
                   const std::vector<SpanNeed>& needs) {
    auto draft = given_lengths(tracks, gap.least, room);
    draft.ruled = gap.ruled;
    draft.lined = gap.lined;
    grow_single(draft, needs);
    grow_spans(draft, needs);
    const Length overflow = draft.total() - room;
    const Length squeeze = squeezed(draft, needs);
    const Length spare = std::max(-overflow, Length{});
    const int gaps = draft.count_growing(gap.grows);
    const Length extra_gap = gaps > 0 ? std::min(spare / gaps, gap.most - gap.least) : Length{};
    const double shares = draft.shares();
    for (std::size_t i = 0; i < tracks.size(); ++i) {
        if (tracks[i].kind == Track::Kind::Share) {
            draft.length[i] += (spare - extra_gap * gaps) * (tracks[i].amount / shares);
        }
    }
    auto bands = placed(draft, extra_gap, gap.grows);
    bands.overflow = squeeze > Length::points(1e-6) ? std::max(squeeze, overflow) : overflow;
    return bands;
}

} // namespace thawslip::layout

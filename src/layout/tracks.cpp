#include "layout/tracks.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

std::size_t at(int track) {
    return static_cast<std::size_t>(track);
}

bool follows_content(const Track& track) {
    return track.kind == Track::Kind::Content || track.kind == Track::Kind::Share;
}

/// Lengths and gaps while they are being worked out.
struct Draft {
    const std::vector<Track>& tracks;
    Length gap;
    std::vector<Length> length;

    /// A gap stands before every track that has a length, but the first of them.
    Length gap_before(std::size_t track) const {
        const bool any_before = std::any_of(length.begin(),
                                            length.begin() + static_cast<std::ptrdiff_t>(track),
                                            [](Length l) { return l > Length{}; });
        return length[track] > Length{} && any_before ? gap : Length{};
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
        for (std::size_t i = at(need.first); i < at(need.first + need.count); ++i) {
            sum += length[i] + (i > at(need.first) ? gap_before(i) : Length{});
        }
        return sum;
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
    Draft draft{tracks, gap, std::vector<Length>(tracks.size())};
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

/// What a need lacks is added evenly to the rows of its span that follow content.
void grow_spans(Draft& draft, const std::vector<SpanNeed>& needs) {
    auto ordered = needs;
    std::ranges::stable_sort(ordered, {}, &SpanNeed::count);
    for (const auto& need : ordered) {
        std::vector<std::size_t> growing;
        for (std::size_t i = at(need.first); i < at(need.first + need.count); ++i) {
            // An empty row stays empty as long as another can grow: its gap would come with it.
            if (follows_content(draft.tracks[i]) && draft.length[i] > Length{}) {
                growing.push_back(i);
            }
        }
        for (std::size_t i = at(need.first + need.count); growing.empty() && i-- > at(need.first);) {
            if (follows_content(draft.tracks[i])) {
                growing.push_back(i);
            }
        }
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

Bands placed(const Draft& draft, Length extra_gap) {
    Bands bands;
    bands.length = draft.length;
    Length edge;
    for (std::size_t i = 0; i < draft.length.size(); ++i) {
        const Length gap = draft.gap_before(i);
        edge += gap > Length{} ? gap + extra_gap : gap;
        bands.start.push_back(edge);
        edge += draft.length[i];
    }
    return bands;
}

} // namespace

Length Bands::span(int first, int count) const {
    const auto last = at(first + count - 1);
    return start[last] + length[last] - start[at(first)];
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
    const auto gaps = gap * static_cast<double>(tracks.empty() ? 0 : tracks.size() - 1);
    Length used = gaps;
    for (const auto& length : draft.length) {
        used += length;
    }
    const Length left = std::max(room - used, Length{});
    for (std::size_t i = 0; i < tracks.size(); ++i) {
        if (tracks[i].kind == Track::Kind::Share) {
            draft.length[i] = left * (tracks[i].amount / shares);
        }
    }
    auto bands = placed(draft, Length{});
    bands.overflow = shares > 0.0 && left <= Length{} ? used - room + Length::points(1)
                                                      : used - room - (shares > 0.0 ? left : Length{});
    return bands;
}

Bands resolve_rows(const std::vector<Track>& tracks, Length gap, Length room,
                   const std::vector<SpanNeed>& needs) {
    auto draft = given_lengths(tracks, gap, room);
    grow_single(draft, needs);
    grow_spans(draft, needs);
    const Length overflow = draft.total() - room;
    const Length squeeze = squeezed(draft, needs);
    const Length spare = std::max(-overflow, Length{});
    const double shares = draft.shares();
    Length extra_gap;
    if (shares > 0.0) {
        for (std::size_t i = 0; i < tracks.size(); ++i) {
            if (tracks[i].kind == Track::Kind::Share) {
                draft.length[i] += spare * (tracks[i].amount / shares);
            }
        }
    } else {
        const Length gaps = draft.total() - [&draft] {
            Length sum;
            for (const auto& length : draft.length) {
                sum += length;
            }
            return sum;
        }();
        const double count = gap > Length{} ? gaps / gap : 0.0;
        extra_gap = count > 0.5 ? std::min(spare / count, gap) : Length{};
    }
    auto bands = placed(draft, extra_gap);
    bands.overflow = squeeze > Length::points(1e-6) ? std::max(squeeze, overflow) : overflow;
    return bands;
}

} // namespace thawslip::layout

#include "layout/arrange.h"

#include "layout/tracks.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

double between(Length low, Length high, double share) {
    return (low + (high - low) * share).in_points();
}

bool has_content(const Area& area, const Content& content) {
    switch (area.kind) {
    case AreaKind::Text: return !content.empty();
    case AreaKind::Code: return content.code;
    case AreaKind::Write: return true;
    }
    return true;
}

/// Which areas are shown: those with something to say, less the first that may leave.
std::vector<bool> shown_areas(const Layout& layout, const Contents& contents, int left_out) {
    std::vector<bool> shown(layout.areas.size());
    std::vector<std::size_t> leavers;
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        shown[i] = has_content(layout.areas[i], contents[i]);
        if (shown[i] && layout.areas[i].leave > 0) {
            leavers.push_back(i);
        }
    }
    std::ranges::stable_sort(leavers, {}, [&](std::size_t i) { return layout.areas[i].leave; });
    for (std::size_t n = 0; n < leavers.size() && std::cmp_less(n, left_out); ++n) {
        shown[leavers[n]] = false;
    }
    return shown;
}

/// The work of `arrange`, step by step: widths, heights, places.
class Arranger {
public:
    Arranger(const Layout& layout, const Contents& contents, Size room,
             const typeset::FontSet& fonts)
        : layout_{layout}, contents_{contents}, room_{room}, fonts_{fonts} {}

    Arrangement run(Choice choice) {
        result_.areas.resize(layout_.areas.size());
        const auto shown = shown_areas(layout_, contents_, choice.left_out);
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            result_.areas[i].shown = shown[i];
            result_.areas[i].type = type_at(layout_.areas[i], choice.scale, fonts_);
        }
        columns_ =
            resolve_columns(columns_in_use(), layout_.column_gap, room_.width, column_needs());
        measure_areas();
        align_first_baselines();
        rows_ = resolve_rows(layout_.rows, {layout_.row_gap, layout_.most_row_gap}, room_.height,
                             row_needs());
        place();
        draw_rules();
        result_.overflow = std::max({columns_.overflow, rows_.overflow, Length{}});
        return std::move(result_);
    }

private:
    const Area& area(std::size_t i) const { return layout_.areas[i]; }
    bool shown(std::size_t i) const { return result_.areas[i].shown; }
    Length width(std::size_t i) const { return columns_.span(area(i).column, area(i).columns); }

    /// The layout's columns. Where others share what is left, a given width in which nothing begins
    /// on this print is left to them: a card that runs on has no code.
    std::vector<Track> columns_in_use() const {
        auto columns = layout_.columns;
        if (std::ranges::find(columns, Track::Kind::Share, &Track::kind) == columns.end()) {
            return columns;
        }
        for (std::size_t column = 0; column < columns.size(); ++column) {
            bool used = columns[column].kind == Track::Kind::Share;
            for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
                used = used || (shown(i) && std::cmp_equal(area(i).column, column));
            }
            if (!used) {
                columns[column] = Track{}; // follows its content, of which there is none
            }
        }
        return columns;
    }

    std::vector<SpanNeed> column_needs() const {
        std::vector<SpanNeed> needs;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (shown(i) && area(i).kind == AreaKind::Text && area(i).columns == 1) {
                needs.push_back({area(i).column, 1,
                                 natural_width(contents_[i], area(i), result_.areas[i].type)});
            }
        }
        return needs;
    }

    void measure_areas() {
        extents_.resize(layout_.areas.size());
        Length tallest;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (!shown(i) || area(i).kind != AreaKind::Text || width(i) <= Length{}) {
                continue;
            }
            extents_[i] = measure(contents_[i], area(i), result_.areas[i].type, width(i));
            result_.areas[i].cuts_words = extents_[i].cuts_words;
            result_.cuts_words |= extents_[i].cuts_words;
            if (extents_[i].height > tallest || extents_[i].cuts_words) {
                tallest = extents_[i].height;
                result_.tightest = area(i).name;
            }
        }
    }

    /// Neighbours that start in the same row share their first baseline.
    void align_first_baselines() {
        shifts_.assign(layout_.areas.size(), Length{});
        std::vector<Length> deepest(layout_.rows.size());
        const auto aligned = [this](std::size_t i) {
            return shown(i) && area(i).kind == AreaKind::Text && area(i).stand == Stand::Top;
        };
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (aligned(i)) {
                auto& row = deepest[static_cast<std::size_t>(area(i).row)];
                row = std::max(row, extents_[i].first_baseline);
            }
        }
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (aligned(i)) {
                shifts_[i] =
                    deepest[static_cast<std::size_t>(area(i).row)] - extents_[i].first_baseline;
            }
        }
    }

    std::vector<SpanNeed> row_needs() const {
        std::vector<SpanNeed> needs;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (!shown(i)) {
                continue;
            }
            switch (area(i).kind) {
            case AreaKind::Text:
                needs.push_back({area(i).row, area(i).rows, extents_[i].height + shifts_[i]});
                break;
            case AreaKind::Code: needs.push_back({area(i).row, area(i).rows, code_need(i)}); break;
            case AreaKind::Write: break;
            }
        }
        return needs;
    }

    /// A code is square: where its rows follow their content they grow to its width; where they
    /// are given, it takes what is there.
    Length code_need(std::size_t i) const {
        for (int row = area(i).row; row < area(i).row + area(i).rows; ++row) {
            if (layout_.rows[static_cast<std::size_t>(row)].kind == Track::Kind::Content) {
                return width(i);
            }
        }
        return {};
    }

    void place() {
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (!shown(i)) {
                continue;
            }
            auto& placed = result_.areas[i];
            placed.room = {{columns_.start_of(area(i).column), rows_.start_of(area(i).row)},
                           {width(i), rows_.span(area(i).row, area(i).rows)}};
            placed.text = placed.room;
            placed.text.origin.y += shifts_[i] + stand_offset(i);
            placed.text.size.height = extents_[i].height;
        }
    }

    Length stand_offset(std::size_t i) const {
        const Length spare = result_.areas[i].room.size.height - extents_[i].height;
        switch (area(i).stand) {
        case Stand::Top: return {};
        case Stand::Middle: return spare / 2;
        case Stand::Bottom: return spare;
        }
        return {};
    }

    void draw_rules() {
        for (const auto& rule : layout_.rules) {
            for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
                if (area(i).name != rule.area || !shown(i)) {
                    continue;
                }
                const int below = area(i).row + area(i).rows;
                const Length gap = rows_.gap_before(below);
                if (gap > Length{}) {
                    const auto& room = result_.areas[i].room;
                    result_.rules.push_back(
                        {{room.left(), room.bottom() + (gap - rule.thickness) / 2},
                         {room.size.width, rule.thickness}});
                }
            }
        }
    }

    const Layout& layout_;
    const Contents& contents_;
    Size room_;
    const typeset::FontSet& fonts_;
    Arrangement result_;
    Bands columns_;
    Bands rows_;
    std::vector<Extent> extents_;
    std::vector<Length> shifts_;
};

} // namespace

TypeSize type_at(const Area& area, Scale scale, const typeset::FontSet& fonts) {
    const auto& x = area.x_height;
    const double t = std::clamp(scale.value, 0.0, 2.0);
    const double points = t <= 1.0 ? between(x.smallest, x.comfortable, t)
                                   : between(x.comfortable, x.largest, t - 1.0);
    const Length size = Length::points(points / fonts.metrics(area.weight).x_height);
    return {size, size * area.leading};
}

Arrangement arrange(const Layout& layout, const Contents& contents, Size room, Choice choice,
                    const typeset::FontSet& fonts) {
    return Arranger{layout, contents, room, fonts}.run(choice);
}

int optional_areas(const Layout& layout, const Contents& contents) {
    int count = 0;
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        count += layout.areas[i].leave > 0 && has_content(layout.areas[i], contents[i]) ? 1 : 0;
    }
    return count;
}

} // namespace thawslip::layout

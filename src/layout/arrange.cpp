#include "layout/arrange.h"

#include "base/list.h"
#include "layout/tracks.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// The work of `arrange`, step by step: widths, heights, places.
class Arranger {
public:
    Arranger(const Layout& layout, const Contents& contents, Size room,
             const typeset::FontSet& fonts)
        : layout_{layout}, contents_{contents}, room_{room}, fonts_{fonts} {}

    Arrangement run(const Sizing& sizing) {
        result_.areas.resize(layout_.areas.size());
        const auto forms = forms_in_use(layout_, contents_, sizing);
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            result_.areas[i].shown = forms[i].has_value();
            result_.areas[i].form = forms[i].value_or(0);
            result_.areas[i].type = type_at(area(i), scale_of(area(i), sizing), fonts_);
        }
        columns_ =
            resolve_columns(columns_in_use(), layout_.column_gap, room_.width, column_needs());
        measure_areas();
        align_first_baselines();
        rows_ = resolve_rows(
            layout_.rows,
            {layout_.row_gap, layout_.most_row_gap, growing_gaps(), ruled_gaps(), lined_gaps()},
            room_.height, row_needs());
        place();
        draw_rules();
        result_.overflow = std::max({columns_.overflow, rows_.overflow, Length{}});
        return std::move(result_);
    }

private:
    const Area& area(std::size_t i) const { return layout_.areas[i]; }
    bool shown(std::size_t i) const { return result_.areas[i].shown; }
    const Content& content(std::size_t i) const { return contents_[i].in(result_.areas[i].form); }
    Length width(std::size_t i) const {
        return columns_.span(area(i).grid.column, area(i).grid.columns);
    }

    /// Whether a given width is left to others: areas begin in it, and none of them is there.
    /// Where no area begins at all, it was drawn as a gap.
    bool is_left(std::size_t column) const {
        bool begins = false;
        bool stands = false;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            const bool here = std::cmp_equal(area(i).grid.column, column);
            begins = begins || here;
            stands = stands || (here && shown(i));
        }
        return begins && !stands;
    }

    /// The layout's columns. Where others share what is left, they get what is left to them: a card
    /// that runs on has no code.
    std::vector<Track> columns_in_use() const {
        auto columns = layout_.columns;
        if (std::ranges::find(columns, Track::Kind::Share, &Track::kind) == columns.end()) {
            return columns;
        }
        for (std::size_t column = 0; column < columns.size(); ++column) {
            if (columns[column].kind != Track::Kind::Share && is_left(column)) {
                columns[column] = Track{}; // follows its content, of which there is none
            }
        }
        return columns;
    }

    std::vector<SpanNeed> column_needs() const {
        std::vector<SpanNeed> needs;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (shown(i) && area(i).grid.columns == 1) {
                needs.push_back({area(i).grid.column, 1,
                                 natural_width(content(i), area(i), result_.areas[i].type)});
            }
        }
        return needs;
    }

    void measure_areas() {
        extents_.resize(layout_.areas.size());
        Length tallest;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (!shown(i) || width(i) <= Length{}) {
                continue;
            }
            extents_[i] = measure(content(i), area(i), result_.areas[i].type, width(i), rows_of(i));
            result_.cut_paragraphs += extents_[i].cut_paragraphs;
            const bool taller = extents_[i].first_baseline && extents_[i].height > tallest;
            if (taller || extents_[i].cut_paragraphs > 0) {
                tallest = extents_[i].height;
                result_.tightest = area(i).name;
            }
        }
    }

    std::size_t row_below(std::size_t i) const {
        const auto& grid = area(i).grid;
        return static_cast<std::size_t>(grid.row) + static_cast<std::size_t>(grid.rows);
    }

    RowHeights rows_of(std::size_t i) const {
        const auto first = layout_.rows.begin() + area(i).grid.row;
        const bool follow = std::any_of(first, first + area(i).grid.rows, [](const Track& row) {
            return row.kind == Track::Kind::Content;
        });
        return follow ? RowHeights::FollowContent : RowHeights::Given;
    }

    /// Neighbours that start in the same row share their first baseline.
    void align_first_baselines() {
        shifts_.assign(layout_.areas.size(), Length{});
        std::vector<Length> deepest(layout_.rows.size());
        const auto row_of = [this](std::size_t i) {
            return static_cast<std::size_t>(area(i).grid.row);
        };
        const auto aligned = [this](std::size_t i) {
            return shown(i) && extents_[i].first_baseline && area(i).stand == Stand::Top;
        };
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (aligned(i)) {
                deepest[row_of(i)] = std::max(deepest[row_of(i)], *extents_[i].first_baseline);
            }
        }
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (aligned(i)) {
                shifts_[i] = deepest[row_of(i)] - *extents_[i].first_baseline;
            }
        }
    }

    /// Which gaps take what is to spare: those under the areas that the layout names, as far as
    /// they are there.
    std::vector<bool> growing_gaps() const {
        if (layout_.spare_under.empty()) {
            return {};
        }
        std::vector<bool> growing(layout_.rows.size());
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            const auto below = row_below(i);
            if (shown(i) && below < growing.size() && contains(layout_.spare_under, area(i).name)) {
                growing[below] = true;
            }
        }
        return growing;
    }

    /// What gaps with a rule want: its thickness, and its distance on both sides.
    std::vector<Length> ruled_gaps() const {
        std::vector<Length> gaps(layout_.rows.size());
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            const auto rule = std::ranges::find(layout_.rules, area(i).name, &RuleUnder::area);
            const auto below = row_below(i);
            if (layout_.rule_gap > Length{} && rule != layout_.rules.end() && shown(i) &&
                below < gaps.size()) {
                gaps[below] = rule->thickness + layout_.rule_gap * 2.0;
            }
        }
        return gaps;
    }

    std::vector<bool> lined_gaps() const {
        std::vector<bool> gaps(layout_.rows.size());
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (row_below(i) < gaps.size() && shown(i) && has_rule(i)) {
                gaps[row_below(i)] = true;
            }
        }
        return gaps;
    }

    bool has_rule(std::size_t i) const {
        return contains(mapped(layout_.rules, &RuleUnder::area), area(i).name);
    }

    std::vector<SpanNeed> row_needs() const {
        std::vector<SpanNeed> needs;
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (shown(i)) {
                needs.push_back(
                    {area(i).grid.row, area(i).grid.rows, extents_[i].height + shifts_[i]});
            }
        }
        return needs;
    }

    void place() {
        for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
            if (!shown(i)) {
                continue;
            }
            const auto& grid = area(i).grid;
            auto& placed = result_.areas[i];
            placed.room = {{columns_.start_of(grid.column), rows_.start_of(grid.row)},
                           {width(i), rows_.span(grid.row, grid.rows)}};
            placed.place = placed.room;
            placed.place.size.height = height_in(placed.room.size, extents_[i]);
            const Length spare = placed.room.size.height - placed.place.size.height;
            placed.place.origin.y += shifts_[i] + spare * share_before(area(i).stand);
        }
    }

    static Length height_in(Size room, const Extent& extent) {
        switch (extent.takes) {
        case Takes::WhatItNeeds: return extent.height;
        case Takes::ASquare: return std::min(room.width, room.height);
        case Takes::AllThereIs: return room.height;
        }
        return {};
    }

    void draw_rules() {
        for (const auto& rule : layout_.rules) {
            for (std::size_t i = 0; i < layout_.areas.size(); ++i) {
                if (area(i).name != rule.area || !shown(i)) {
                    continue;
                }
                const int below = area(i).grid.row + area(i).grid.rows;
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

Sizing sizing_at(Scale scale, int conceded) {
    Sizing sizing{{}, conceded, {}};
    sizing.scales.fill(scale);
    return sizing;
}

Scale scale_of(const Area& area, const Sizing& sizing) {
    const auto* text = text_of(area);
    return sizing.scales.at(text == nullptr ? 0 : text->group);
}

Result<Contents, ContentFault> prepare(const Layout& layout, const wording::Print& print,
                                       Shaper& shaper) {
    Contents contents;
    contents.reserve(layout.areas.size());
    for (const auto& area : layout.areas) {
        auto content = prepare(area, print, shaper);
        if (!content) {
            return Failure{content.fault()};
        }
        contents.push_back(std::move(content).value());
    }
    return contents;
}

Arrangement arrange(const Layout& layout, const Contents& contents, Size room, const Sizing& sizing,
                    const typeset::FontSet& fonts) {
    return Arranger{layout, contents, room, fonts}.run(sizing);
}

Sizing least_sizing(const Layout& layout, const Contents& contents) {
    return sizing_at({0.0}, static_cast<int>(concessions(layout, contents).size()));
}

bool fits_whole(const Arrangement& arrangement, const Layout& layout, const Contents& contents,
                Size room, const typeset::FontSet& fonts) {
    const auto least_cut = [&] {
        return arrange(layout, contents, room, least_sizing(layout, contents), fonts)
            .cut_paragraphs;
    };
    return arrangement.fits() &&
           (arrangement.cut_paragraphs == 0 || arrangement.cut_paragraphs <= least_cut());
}

std::vector<Concession> concessions(const Layout& layout, const Contents& contents) {
    std::vector<std::pair<int, Concession>> found;
    for (std::size_t i = 0; i < layout.areas.size(); ++i) {
        for (std::size_t form = 1; form <= contents[i].shorter_forms(); ++form) {
            found.push_back({shorten_of(layout.areas[i], form), {i, Concession::What::Shorten}});
        }
        if (const int drop = drop_of(layout.areas[i]); drop > 0 && contents[i].is_there()) {
            found.push_back({drop, {i, Concession::What::Drop}});
        }
    }
    std::ranges::stable_sort(found, {}, &std::pair<int, Concession>::first);
    return mapped(found, &std::pair<int, Concession>::second);
}

std::vector<std::optional<std::size_t>> forms_in_use(const Layout& layout, const Contents& contents,
                                                     const Sizing& sizing) {
    std::vector<std::size_t> shortened(contents.size());
    std::vector<bool> dropped(contents.size());
    const auto all = concessions(layout, contents);
    const auto made = std::min(all.size(), static_cast<std::size_t>(sizing.conceded));
    for (std::size_t i = 0; i < made; ++i) {
        if (std::ranges::find(sizing.taken_back, i) != sizing.taken_back.end()) {
            continue;
        }
        if (all[i].what == Concession::What::Drop) {
            dropped[all[i].area] = true;
        } else {
            ++shortened[all[i].area];
        }
    }
    std::vector<std::optional<std::size_t>> forms(contents.size());
    for (std::size_t i = 0; i < contents.size(); ++i) {
        if (!dropped[i] && contents[i].in(shortened[i]).is_there()) {
            forms[i] = shortened[i];
        }
    }
    return forms;
}

} // namespace thawslip::layout

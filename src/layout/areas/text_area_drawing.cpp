#include "layout/areas/entry.h"
#include "layout/areas/stack.h"
#include "layout/areas/tick_boxes.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace thawslip::layout {
namespace {

using typeset::PreparedParagraph;

/// How many columns from the left a row leaves to the row above it, which says the same.
std::size_t left_to_above(const PreparedEntry& row, const StackedEntry& stands) {
    if (stands.opens) {
        return 0;
    }
    const auto own = std::ranges::find(row.cells, false, &PreparedEntry::repeats);
    return static_cast<std::size_t>(own - row.cells.begin());
}

/// Sets the lines of a content where they are stacked.
class Setter {
public:
    Setter(const TextArea& area, TypeSize type, Rect room, const Columns& columns, Tone tone)
        : area_{area}, type_{type}, room_{room}, columns_{columns}, align_{area.align}, tone_{
                                                                                            tone} {}

    void entry(const PreparedEntry& entry, const StackedEntry& stands) {
        strip_ = (columns_.width + strip_gap) * stands.strip;
        if (entry.cells.empty()) {
            y_ = type_.leading * stands.top;
            words(entry, own_place(entry, columns_), strip_);
            if (!entry.second.empty()) {
                const auto corner = second_corner(entry, columns_);
                y_ = type_.leading * (stands.top + corner.down);
                words(entry.second.front(), second_place(entry, columns_), strip_ + corner.right);
            }
            if (entry.role == wording::Role::Heading && area_.heading_rule > Length{}) {
                rule(stands.bottom - heading_drop / 2, 0.0, area_.heading_rule);
            }
            return;
        }
        row(entry, stands);
    }

    /// The line under a row, which is shorter where the row below leaves columns to it.
    void rule_under(const StackedEntry& stands, std::size_t first_column) {
        if (area_.row_rule > Length{} && first_column < columns_.table.start.size()) {
            rule(stands.bottom + area_.space / 2, columns_.table.start[first_column],
                 area_.row_rule);
        }
    }

    /// The rail on which moments stand, `x` em from the left, and a stop at each.
    void rail(const std::vector<PreparedEntry>& entries, const Stack& stack, double x) {
        const Length middle = room_.left() + type_.size * x;
        const Length top = room_.top() + type_.leading * (baseline_share - 0.55);
        const Length bottom = room_.top() + type_.leading * stack.height;
        items_.push_back(Rule{{{middle - thinnest_line / 2, top}, {thinnest_line, bottom - top}}});
        for (std::size_t i = 0; i < entries.size(); ++i) {
            if (entries[i].label) {
                y_ = type_.leading * stack.entries[i].top;
                const Length side = type_.size * 0.3;
                const Length across = baseline(0) - type_.size * 0.26; // half of a small letter
                items_.push_back(Rule{{{middle - side / 2, across - side / 2}, {side, side}}});
            }
        }
    }

    std::vector<Item> take() { return std::move(items_); }

private:
    Length baseline(int line) const {
        return room_.top() + y_ + type_.leading * (line + baseline_share);
    }

    /// A line across the strip from `start` em on, in the middle of `at` leadings from the top.
    void rule(double at, double start, Length thickness) {
        const Length left = room_.left() + type_.size * (strip_ + start);
        const Length width = columns_.strips == 1 && start == 0.0
                                 ? room_.size.width
                                 : type_.size * (columns_.width - start);
        items_.push_back(
            Rule{{{left, room_.top() + type_.leading * at - thickness / 2}, {width, thickness}}});
    }

    void row(const PreparedEntry& entry, const StackedEntry& stands) {
        const auto& table = columns_.table;
        for (auto i = left_to_above(entry, stands); i < entry.cells.size(); ++i) {
            y_ = type_.leading * stands.cells[i];
            align_ = area_.table_align.empty() ? area_.align : area_.table_align[i];
            const auto& cell = entry.cells[i];
            const double width = cell_width(entry, i, columns_);
            words(cell, own_place(cell, indents_of(cell, width), width), strip_ + table.start[i]);
        }
        align_ = area_.align;
        const auto place = row_place(entry, columns_);
        y_ = type_.leading * (stands.top + height_of_cells(entry, columns_, stands.opens));
        for (const auto& below : entry.below) {
            words(below, place_below(below, entry, place), strip_ + place.at.text);
        }
    }

    /// Sets marker, label, text, boxes and what stands below at their place, `start` em of the
    /// area's type from its left.
    void words(const PreparedEntry& entry, const OwnPlace& place, double start) {
        const auto areas_own = type_;
        const double left = start / entry.size;
        type_ = {areas_own.size * entry.size, areas_own.leading * entry.size};
        if (entry.label_above) {
            label_above(*entry.label, left, place.width);
        }
        marker(entry, left + place.at.marker);
        if (entry.label && !entry.label_above) {
            paragraph(*entry.label, left + place.at.label, place.at.label_width);
        }
        paragraph(entry.text, left + place.at.text, place.width - place.at.text);
        y_ += type_.leading * lines_of(entry, place);
        boxes(entry, left + place.at.text, place.width - place.at.text);
        type_ = areas_own;
        for (const auto& below : entry.below) {
            words(below, place_below(below, entry, place), start + place.at.text * entry.size);
        }
    }

    /// Sets the label small and moves down past it.
    void label_above(const PreparedParagraph& label, double left, double width) {
        const auto below = type_;
        type_ = {below.size * above_size, below.leading * above_size};
        paragraph(label, left / above_size, width / above_size);
        y_ += type_.leading * label.count_lines(width / above_size);
        type_ = below;
    }

    void marker(const PreparedEntry& entry, double left) {
        if (entry.marker == wording::Marker::TickBox) {
            tick_box(left, 0);
        }
        if (entry.number) {
            paragraph(*entry.number, left, entry.number->natural_width() + number_gap);
        }
    }

    void tick_box(double left, int line) {
        const Length side = type_.size * tick_box_side;
        const Length x = room_.left() + type_.size * left + thinnest_line / 2;
        items_.push_back(Outline{{{x, baseline(line) - side}, {side, side}}, thinnest_line, {}});
    }

    /// Sets the boxes with what stands beside each, and moves down past them.
    void boxes(const PreparedEntry& entry, double left, double width) {
        const auto boxes = tick_boxes(entry, width);
        for (int i = 0; std::cmp_less(i, entry.boxes.size()); ++i) {
            const double start = left + boxes.pitch * (i % boxes.in_line);
            const int line = i / boxes.in_line;
            tick_box(start, line);
            const auto& words = entry.boxes[static_cast<std::size_t>(i)];
            for (const auto& set : words.set(words.natural_width() + 1.0)) {
                pieces(set, start + tick_box_text, line);
            }
        }
        y_ += type_.leading * boxes.lines;
    }

    void paragraph(const PreparedParagraph& text, double left, double width) {
        int n = 0;
        for (const auto& line : text.set(std::max(width, 0.1))) {
            pieces(line, left + std::max(width - line.width, 0.0) * share_before(align_), n);
            ++n;
        }
    }

    void pieces(const typeset::Line& line, double start, int n) {
        for (const auto& piece : line.pieces) {
            items_.push_back(Text{piece.run,
                                  type_.size,
                                  {room_.left() + type_.size * (start + piece.x), baseline(n)},
                                  tone_});
        }
    }

    const TextArea& area_;
    TypeSize type_;
    Rect room_;
    const Columns& columns_;
    Align align_;
    double strip_ = 0.0; ///< where the strip of the entry begins, in em
    Tone tone_;
    Length y_;
    std::vector<Item> items_;
};

/// A border stands close around its words, not around all of the place that they may have.
Rect bordered(const Content& content, const TextArea& area, TypeSize type, Rect place) {
    const Length width = std::min(natural_width(content, area, type), place.size.width);
    place.origin.x += (place.size.width - width) * share_before(area.align);
    place.size.width = width;
    return place;
}

Item border(const TextArea& area, Rect place) {
    constexpr Length line = Length::points(1);
    if (area.border == Border::Reversed) {
        return Rule{place};
    }
    return Outline{place.inset(line / 2), line, {}};
}

} // namespace

std::vector<Item> draw(const Content& content, const TextArea& area, TypeSize type, Rect place,
                       const Ink& /*ink*/) {
    if (!content.is_there()) {
        return {};
    }
    const auto pad = padding_of(content, area, type.size);
    std::vector<Item> items;
    Tone tone = Tone::Black;
    if (pad.side > Length{}) {
        place = bordered(content, area, type, place);
        items.push_back(border(area, place));
        tone = area.border == Border::Reversed ? Tone::White : Tone::Black;
        place = {{place.left() + pad.side, place.top() + pad.above},
                 {place.size.width - pad.side * 2.0, place.size.height - pad.above - pad.below}};
    }
    const auto columns = columns_of(content, area, type.size, place.size.width);
    Setter setter{area, type, place, columns, tone};
    const auto& entries = content.entries();
    const auto stacked = stack(content, area, columns);
    const auto& places = stacked.entries;
    for (std::size_t i = 0; i < places.size(); ++i) {
        for (const auto& [head, top, bottom] : places[i].heads) {
            StackedEntry again;
            again.top = top;
            again.bottom = bottom;
            again.strip = places[i].strip;
            again.cells.assign(entries[head].cells.size(), again.top);
            setter.entry(said_again(entries[head]), again);
        }
        setter.entry(entries[i], places[i]);
        if (!entries[i].cells.empty()) {
            const bool last = i + 1 == places.size();
            setter.rule_under(places[i], last ? 0 : left_to_above(entries[i + 1], places[i + 1]));
        }
    }
    if (area.labels == LabelPlace::Rail && columns.prose.label_width > 0.0) {
        setter.rail(entries, stacked, columns.prose.label_width + rail_gap * 0.4);
    }
    std::ranges::move(setter.take(), std::back_inserter(items));
    return items;
}

} // namespace thawslip::layout

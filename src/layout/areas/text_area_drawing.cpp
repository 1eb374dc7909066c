#include "layout/areas/entry.h"
#include "layout/areas/stack.h"

#include <algorithm>
#include <iterator>

namespace thawslip::layout {
namespace {

using typeset::PreparedParagraph;

/// Sets the lines of a content where they are stacked.
class Setter {
public:
    Setter(const TextArea& area, TypeSize type, Rect room, Tone tone)
        : area_{area}, type_{type}, room_{room}, tone_{tone} {}

    void entry(const PreparedEntry& entry, const StackedEntry& stands, const Columns& columns) {
        if (entry.cells.empty()) {
            y_ = type_.leading * stands.top;
            words(entry, own_place(entry, columns), 0.0);
            return;
        }
        row(entry, stands, columns.table);
        if (area_.row_rule > Length{}) {
            const Length below = type_.leading * (stands.bottom + area_.space / 2);
            items_.push_back(Rule{{{room_.left(), room_.top() + below - area_.row_rule / 2},
                                   {room_.size.width, area_.row_rule}}});
        }
    }

    std::vector<Item> take() { return std::move(items_); }

private:
    Length baseline(int line) const {
        return room_.top() + y_ + type_.leading * (line + baseline_share);
    }

    void row(const PreparedEntry& entry, const StackedEntry& stands, const TableColumns& columns) {
        for (std::size_t i = 0; i < entry.cells.size(); ++i) {
            y_ = type_.leading * stands.cells[i];
            const auto& cell = entry.cells[i];
            const double width = columns.width[i];
            words(cell, own_place(cell, indents_of(cell, width), width), columns.start[i]);
        }
    }

    /// Sets marker, label and text at their place, `start` em of the area's type from its left.
    void words(const PreparedEntry& entry, const OwnPlace& place, double start) {
        const auto areas_own = type_;
        const double left = start / entry.size;
        type_ = {areas_own.size * entry.size, areas_own.leading * entry.size};
        if (entry.label_above) {
            label_above(*entry.label, place.width);
        }
        marker(entry, left);
        if (entry.label && !entry.label_above) {
            paragraph(*entry.label, left + place.at.label,
                      place.at.text - place.at.label - label_gap);
        }
        paragraph(entry.text, left + place.at.text, place.width - place.at.text);
        type_ = areas_own;
    }

    /// Sets the label small and moves down past it.
    void label_above(const PreparedParagraph& label, double width) {
        const auto below = type_;
        type_ = {below.size * above_size, below.leading * above_size};
        paragraph(label, 0.0, width / above_size);
        y_ += type_.leading * label.count_lines(width / above_size);
        type_ = below;
    }

    void marker(const PreparedEntry& entry, double left) {
        if (entry.marker == wording::Marker::TickBox) {
            const Length side = type_.size * 0.72;
            const Length x = room_.left() + type_.size * left + line_width / 2;
            items_.push_back(Outline{{{x, baseline(0) - side}, {side, side}}, line_width, {}});
        }
        if (entry.number) {
            paragraph(*entry.number, left, entry.number->natural_width() + number_gap);
        }
    }

    void paragraph(const PreparedParagraph& text, double left, double width) {
        int n = 0;
        for (const auto& line : text.set(std::max(width, 0.1))) {
            const double start =
                left + std::max(width - line.width, 0.0) * share_before(area_.align);
            for (const auto& piece : line.pieces) {
                items_.push_back(Text{piece.run,
                                      type_.size,
                                      {room_.left() + type_.size * (start + piece.x), baseline(n)},
                                      tone_});
            }
            ++n;
        }
    }

    // Lines thinner than this fail on worn printers: two dots at 203 dpi.
    static constexpr Length line_width = Length::points(0.75);
    const TextArea& area_;
    TypeSize type_;
    Rect room_;
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
    Setter setter{area, type, place, tone};
    const auto places = stack(content, area, columns).entries;
    for (std::size_t i = 0; i < places.size(); ++i) {
        setter.entry(content.entries()[i], places[i], columns);
    }
    std::ranges::move(setter.take(), std::back_inserter(items));
    return items;
}

} // namespace thawslip::layout

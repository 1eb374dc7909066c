#include "layout/areas/entry.h"

#include "layout/areas/tick_boxes.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

constexpr double widest_label = 0.42; // of the area's width
constexpr double least_width = 0.1;   // em, so that a place without room still has lines
constexpr double hair = 1e-9;

double marker_of(const PreparedEntry& entry) {
    if (entry.marker == wording::Marker::None) {
        return 0.0;
    }
    const double number = entry.number ? entry.number->natural_width() + number_gap : 0.0;
    return std::max(marker_width, number);
}

double label_of(const PreparedEntry& entry) {
    return entry.label && !entry.label_above ? entry.label->natural_width() + label_gap : 0.0;
}

bool cuts_in(const PreparedEntry& entry, const OwnPlace& place) {
    const double room_for_words = place.width - place.at.text + hair;
    const auto cuts_below = [&](const PreparedEntry& below) {
        return cuts_in(below, place_below(below, entry, place));
    };
    if (std::max(entry.text.widest_word(), widest_tick_box(entry)) > room_for_words ||
        std::ranges::any_of(entry.below, cuts_below)) {
        return true;
    }
    if (!entry.label) {
        return false;
    }
    const double room =
        entry.label_above ? place.width / above_size : place.at.text - place.at.label - label_gap;
    return entry.label->widest_word() > room + hair;
}

/// The height of words at their place, in leadings of the area's type.
double height_in(const PreparedEntry& entry, const OwnPlace& place) {
    const double above =
        entry.label_above ? above_size * entry.label->count_lines(place.width / above_size) : 0.0;
    const int boxes = tick_boxes(entry, place.width - place.at.text).lines;
    double height = entry.size * (above + lines_of(entry, place) + boxes);
    for (const auto& below : entry.below) {
        height += height_in(below, place_below(below, entry, place));
    }
    return height;
}

/// How many strips stand side by side in an area: few rows are better read below each other.
int strips_in(const Content& content, const TextArea& area, Length em, Length room) {
    if (area.strips <= Length{}) {
        return 1;
    }
    const Length gap = em * strip_gap;
    const double most = (room + gap) / (area.strips + gap);
    constexpr std::size_t least_rows = 6;
    const auto filled = static_cast<double>(content.entries().size() / least_rows);
    return static_cast<int>(std::clamp(most + hair, 1.0, std::max(filled, 1.0)));
}

} // namespace

Indents indents_of(const PreparedEntry& cell, double width) {
    const double marker = marker_of(cell);
    return {marker, marker + std::min(label_of(cell), width * widest_label)};
}

int lines_of(const PreparedEntry& entry, const OwnPlace& place) {
    const int text = entry.text.count_lines(std::max(place.width - place.at.text, least_width));
    int label = 0;
    if (entry.label && !entry.label_above) {
        label = entry.label->count_lines(
            std::max(place.at.text - place.at.label - label_gap, least_width));
    }
    const bool says_more = !entry.boxes.empty() || !entry.below.empty();
    return std::max({text, label, says_more ? 0 : 1});
}

OwnPlace place_below(const PreparedEntry& below, const PreparedEntry& entry,
                     const OwnPlace& place) {
    const double width = (place.width - place.at.text) * entry.size;
    return own_place(below, indents_of(below, width), width);
}

Columns columns_of(const Content& content, const TextArea& area, Length em, Length room) {
    const int strips = strips_in(content, area, em, room);
    const double width = (room / em - strip_gap * (strips - 1)) / strips;
    double marker = 0.0;
    double label = 0.0;
    for (const auto& entry : content.entries()) {
        marker = std::max(marker, marker_of(entry));
        label = std::max(label, label_of(entry) * entry.size);
    }
    Columns columns{{marker, marker + std::min(label, width * widest_label)}, {}, width, strips};
    if (!area.table.empty()) {
        columns.table = table_columns(content, area, em, strips == 1 ? room : em * width);
    }
    return columns;
}

OwnPlace own_place(const PreparedEntry& entry, const Indents& at, double width) {
    return {{at.label / entry.size, at.text / entry.size}, width / entry.size};
}

OwnPlace own_place(const PreparedEntry& entry, const Columns& columns) {
    const bool heads = entry.role == wording::Role::Heading;
    return own_place(entry, heads ? Indents{} : columns.prose, columns.width);
}

double height_of(const PreparedEntry& entry, const Columns& columns, bool opens) {
    if (entry.cells.empty()) {
        return height_in(entry, own_place(entry, columns));
    }
    double highest = 1.0;
    for (std::size_t i = 0; i < entry.cells.size(); ++i) {
        if (opens || !entry.cells[i].repeats) {
            highest = std::max(highest, height_of_cell(entry, i, columns));
        }
    }
    return highest;
}

double height_of_cell(const PreparedEntry& row, std::size_t i, const Columns& columns) {
    const double width = columns.table.width[i];
    const auto& cell = row.cells[i];
    return height_in(cell, own_place(cell, indents_of(cell, width), width));
}

bool says_something(const PreparedEntry& entry) {
    return entry.marker != wording::Marker::None || entry.label || !entry.boxes.empty() ||
           !entry.below.empty() || entry.text.natural_width() > 0.0;
}

double first_baseline(const PreparedEntry& entry) {
    return entry.size * (entry.label_above ? above_size : 1.0) * baseline_share;
}

bool cuts_words(const PreparedEntry& entry, const Columns& columns) {
    if (entry.cells.empty()) {
        return cuts_in(entry, own_place(entry, columns));
    }
    bool cuts = columns.table.too_narrow;
    for (std::size_t i = 0; i < entry.cells.size(); ++i) {
        const double width = columns.table.width[i];
        const auto& cell = entry.cells[i];
        cuts = cuts || cuts_in(cell, own_place(cell, indents_of(cell, width), width));
    }
    return cuts;
}

double entry_width(const PreparedEntry& entry) {
    const double before = marker_of(entry) + label_of(entry);
    double widest = std::max(entry.text.natural_width(), tick_boxes_width(entry));
    for (const auto& below : entry.below) {
        widest = std::max(widest, entry_width(below) / entry.size);
    }
    return entry.size * (before + widest);
}

} // namespace thawslip::layout

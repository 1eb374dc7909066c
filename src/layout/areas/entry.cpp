#include "layout/areas/entry.h"

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
    if (entry.text.widest_word() > place.width - place.at.text + hair) {
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
    const int text = entry.text.count_lines(std::max(place.width - place.at.text, least_width));
    int label = 0;
    double above = 0.0;
    if (entry.label_above) {
        above = above_size * entry.label->count_lines(place.width / above_size);
    } else if (entry.label) {
        label = entry.label->count_lines(
            std::max(place.at.text - place.at.label - label_gap, least_width));
    }
    return entry.size * (above + std::max({text, label, 1}));
}

} // namespace

Indents indents_of(const PreparedEntry& cell, double width) {
    const double marker = marker_of(cell);
    return {marker, marker + std::min(label_of(cell), width * widest_label)};
}

Columns columns_of(const Content& content, const TextArea& area, Length em, Length room) {
    const double width = room / em;
    double marker = 0.0;
    double label = 0.0;
    for (const auto& entry : content.entries()) {
        marker = std::max(marker, marker_of(entry));
        label = std::max(label, label_of(entry) * entry.size);
    }
    Columns columns{{marker, marker + std::min(label, width * widest_label)}, {}, width};
    if (!area.table.empty()) {
        columns.table = table_columns(content, area, em, room);
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

double height_of(const PreparedEntry& entry, const Columns& columns) {
    if (entry.cells.empty()) {
        return height_in(entry, own_place(entry, columns));
    }
    double highest = 1.0;
    for (std::size_t i = 0; i < entry.cells.size(); ++i) {
        highest = std::max(highest, height_of_cell(entry, i, columns));
    }
    return highest;
}

double height_of_cell(const PreparedEntry& row, std::size_t i, const Columns& columns) {
    const double width = columns.table.width[i];
    const auto& cell = row.cells[i];
    return height_in(cell, own_place(cell, indents_of(cell, width), width));
}

bool says_something(const PreparedEntry& entry) {
    return entry.marker != wording::Marker::None || entry.label || entry.text.natural_width() > 0.0;
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
    return entry.size * (marker_of(entry) + label_of(entry) + entry.text.natural_width());
}

} // namespace thawslip::layout

#include "layout/entry.h"

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

bool is_heading(const PreparedEntry& entry) {
    return entry.role == wording::Role::Heading && entry.cells.empty();
}

bool cuts_in(const PreparedEntry& entry, const Indents& at, double width) {
    if (entry.text.widest_word() > width - at.text + hair) {
        return true;
    }
    if (!entry.label) {
        return false;
    }
    const double room = entry.label_above ? width / above_size : at.text - at.label - label_gap;
    return entry.label->widest_word() > room + hair;
}

} // namespace

int EntryLines::count() const {
    return std::max({label, text, 1});
}

Indents indents_of(const PreparedEntry& cell, double width) {
    const double marker = marker_of(cell);
    return {marker, marker + std::min(label_of(cell), width * widest_label)};
}

Columns columns_of(const Content& content, const Area& area, Length em, Length room) {
    const double width = room / em;
    double marker = 0.0;
    double label = 0.0;
    for (const auto& entry : content.entries) {
        marker = std::max(marker, marker_of(entry));
        label = std::max(label, label_of(entry));
    }
    Columns columns{{marker, marker + std::min(label, width * widest_label)}, {}, width};
    if (!area.table.empty()) {
        columns.table = table_columns(content, area, em, room);
    }
    return columns;
}

EntryLines count_lines(const PreparedEntry& entry, const Indents& at, double width) {
    EntryLines lines;
    lines.text = entry.text.count_lines(std::max(width - at.text, least_width));
    if (entry.label && !entry.label_above) {
        lines.label =
            entry.label->count_lines(std::max(at.text - at.label - label_gap, least_width));
    }
    return lines;
}

double height_of(const PreparedEntry& entry, const Area& area, const Columns& columns) {
    if (is_heading(entry)) {
        return area.heading_size * entry.text.count_lines(columns.width / area.heading_size);
    }
    if (entry.cells.empty()) {
        const double above = entry.label_above
                                 ? above_size * entry.label->count_lines(columns.width / above_size)
                                 : 0.0;
        return above + count_lines(entry, columns.prose, columns.width).count();
    }
    int lines = 1;
    for (std::size_t i = 0; i < entry.cells.size(); ++i) {
        const double width = columns.table.width[i];
        const auto& cell = entry.cells[i];
        lines = std::max(lines, count_lines(cell, indents_of(cell, width), width).count());
    }
    return lines;
}

double first_baseline(const PreparedEntry& entry, const Area& area) {
    const double size = is_heading(entry)   ? area.heading_size
                        : entry.label_above ? above_size
                                            : 1.0;
    return size * baseline_share;
}

bool cuts_words(const PreparedEntry& entry, const Area& area, const Columns& columns) {
    if (is_heading(entry)) {
        return entry.text.widest_word() > columns.width / area.heading_size + hair;
    }
    if (entry.cells.empty()) {
        return cuts_in(entry, columns.prose, columns.width);
    }
    bool cuts = columns.table.too_narrow;
    for (std::size_t i = 0; i < entry.cells.size(); ++i) {
        const double width = columns.table.width[i];
        cuts = cuts || cuts_in(entry.cells[i], indents_of(entry.cells[i], width), width);
    }
    return cuts;
}

double entry_width(const PreparedEntry& entry) {
    double width = 0.0;
    for (const auto& cell : entry.cells) {
        width += (width > 0.0 ? table_gap : 0.0) + entry_width(cell);
    }
    return std::max(width, marker_of(entry) + label_of(entry) + entry.text.natural_width());
}

} // namespace thawslip::layout

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
    return entry.label && !entry.label_above ? entry.label->natural_width() : 0.0;
}

/// Whether all that an entry says is a label in its column.
bool is_label_alone(const PreparedEntry& entry) {
    return entry.label && !entry.label_above && entry.text.natural_width() <= 0.0;
}

/// Markers and labels beside each other: labels first on a rail, else behind the markers.
Indents indents(double marker, double label, double width, LabelPlace labels) {
    if (label <= 0.0) {
        return {0.0, marker, 0.0, marker};
    }
    const bool on_rail = labels == LabelPlace::Rail;
    const double gap = on_rail ? rail_gap : label_gap;
    const double column = std::min(label + gap, width * widest_label);
    return {on_rail ? column : 0.0, on_rail ? 0.0 : marker, column - gap, marker + column};
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
    const double room = entry.label_above ? place.width / above_size : place.at.label_width;
    return entry.label->widest_word() > room + hair;
}

/// The height of a label that hangs in its column, in leadings of the area's type.
double label_height(const PreparedEntry& entry, const OwnPlace& place) {
    return entry.label && !entry.label_above
               ? entry.size * entry.label->count_lines(std::max(place.at.label_width, least_width))
               : 0.0;
}

/// The height of words at their place, without such a label.
double text_height(const PreparedEntry& entry, const OwnPlace& place);

double height_in(const PreparedEntry& entry, const OwnPlace& place) {
    return std::max(text_height(entry, place), label_height(entry, place));
}

double text_height(const PreparedEntry& entry, const OwnPlace& place) {
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
    const auto filled = std::max<std::size_t>(content.entries().size() / least_rows, 1);
    return static_cast<int>(std::clamp(most + hair, 1.0, static_cast<double>(filled)));
}

/// How wide the first language stands where the second stands beside it.
double first_width(const Columns& columns) {
    return columns.beside > 0.0 ? columns.beside - beside_gap : columns.width;
}

/// The height of an entry that is no row, with what the second language says of it.
double height_of_pair(const PreparedEntry& entry, const Columns& columns) {
    const double first = height_in(entry, own_place(entry, columns));
    if (entry.second.empty()) {
        return first;
    }
    const double second = height_in(entry.second.front(), second_place(entry, columns));
    return std::max(first, second_corner(entry, columns).down + second);
}

} // namespace

Indents indents_of(const PreparedEntry& cell, double width) {
    return indents(marker_of(cell), label_of(cell), width, LabelPlace::Column);
}

int lines_of(const PreparedEntry& entry, const OwnPlace& place) {
    const int text = entry.text.count_lines(std::max(place.width - place.at.text, least_width));
    const bool says_more = !entry.boxes.empty() || !entry.below.empty();
    return std::max(text, says_more ? 0 : 1);
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
    bool is_said_twice = false;
    for (const auto& entry : content.entries()) {
        marker = std::max(marker, marker_of(entry));
        label = std::max(label, label_of(entry) * entry.size);
        for (const auto& second : entry.second) {
            label = std::max(label, label_of(second) * second.size);
            is_said_twice = is_said_twice || !is_label_alone(second);
        }
    }
    Columns columns{{}, {}, width, strips};
    if (is_said_twice && area.second == SecondPlace::Beside && room >= least_width_beside) {
        columns.beside = (width + beside_gap) / 2;
    }
    columns.prose = indents(marker, label, first_width(columns), area.labels);
    if (!area.table.empty()) {
        columns.table = table_columns(content, area, em, strips == 1 ? room : em * width);
    }
    return columns;
}

OwnPlace own_place(const PreparedEntry& entry, const Indents& at, double width) {
    const double size = entry.size;
    return {{at.marker / size, at.label / size, at.label_width / size, at.text / size},
            width / size};
}

OwnPlace own_place(const PreparedEntry& entry, const Columns& columns) {
    const bool heads = entry.role == wording::Role::Heading;
    const bool is_shared = !entry.second.empty() && !is_label_alone(entry.second.front());
    return own_place(entry, heads ? Indents{} : columns.prose,
                     is_shared ? first_width(columns) : columns.width);
}

OwnPlace second_place(const PreparedEntry& entry, const Columns& columns) {
    const auto& second = entry.second.front();
    const bool heads = entry.role == wording::Role::Heading;
    return own_place(second, heads ? Indents{} : columns.prose, first_width(columns));
}

SecondCorner second_corner(const PreparedEntry& entry, const Columns& columns) {
    const auto& second = entry.second.front();
    const auto place = own_place(entry, columns);
    if (is_label_alone(second)) {
        return {0.0, label_height(entry, place)};
    }
    if (columns.beside > 0.0) {
        return {columns.beside, std::max(first_baseline(entry) - first_baseline(second), 0.0)};
    }
    return {0.0, height_in(entry, place)};
}

double height_of(const PreparedEntry& entry, const Columns& columns, bool opens) {
    if (entry.cells.empty()) {
        return height_of_pair(entry, columns);
    }
    double height = height_of_cells(entry, columns, opens);
    for (const auto& below : entry.below) {
        height += height_in(below, place_below(below, entry, row_place(entry, columns)));
    }
    return height;
}

double height_of_cells(const PreparedEntry& row, const Columns& columns, bool opens) {
    double highest = 1.0;
    for (std::size_t i = 0; i < row.cells.size(); ++i) {
        if (opens || !row.cells[i].repeats) {
            highest = std::max(highest, height_of_cell(row, i, columns));
        }
    }
    return highest;
}

OwnPlace row_place(const PreparedEntry& row, const Columns& columns) {
    return own_place(row, indents_of(row.cells.front(), columns.table.width.front()),
                     columns.width);
}

double cell_width(const PreparedEntry& row, std::size_t i, const Columns& columns) {
    const auto& table = columns.table;
    const bool may_reach = row.role == wording::Role::Text && i + 1 < row.cells.size() &&
                           table.leaves_room.at(i + 1) && !table.leaves_room.at(i);
    const double left = may_reach ? table.width[i + 1] - entry_width(row.cells[i + 1]) : 0.0;
    return table.width[i] + std::max(left, 0.0);
}

double height_of_cell(const PreparedEntry& row, std::size_t i, const Columns& columns) {
    const double width = cell_width(row, i, columns);
    const auto& cell = row.cells[i];
    return height_in(cell, own_place(cell, indents_of(cell, width), width));
}

double words_height_of(const PreparedEntry& entry, const Columns& columns) {
    if (!entry.cells.empty()) {
        return height_of(entry, columns);
    }
    const double first = text_height(entry, own_place(entry, columns));
    const bool is_alone = entry.second.empty() || is_label_alone(entry.second.front());
    return is_alone ? first
                    : std::max(first,
                               second_corner(entry, columns).down +
                                   text_height(entry.second.front(), second_place(entry, columns)));
}

const PreparedEntry& said_again(const PreparedEntry& head) {
    return head.again.empty() ? head : head.again.front();
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
        return cuts_in(entry, own_place(entry, columns)) ||
               (!entry.second.empty() &&
                cuts_in(entry.second.front(), second_place(entry, columns)));
    }
    bool cuts = columns.table.too_narrow ||
                std::ranges::any_of(entry.below, [&](const PreparedEntry& below) {
                    return cuts_in(below, place_below(below, entry, row_place(entry, columns)));
                });
    for (std::size_t i = 0; i < entry.cells.size(); ++i) {
        const double width = cell_width(entry, i, columns);
        const auto& cell = entry.cells[i];
        cuts = cuts || cuts_in(cell, own_place(cell, indents_of(cell, width), width));
    }
    return cuts;
}

double entry_width(const PreparedEntry& entry) {
    const double label = label_of(entry) > 0.0 ? label_of(entry) + label_gap : 0.0;
    const double before = marker_of(entry) + label;
    double widest = std::max(entry.text.natural_width(), tick_boxes_width(entry));
    for (const auto& below : entry.below) {
        widest = std::max(widest, entry_width(below) / entry.size);
    }
    return entry.size * (before + widest);
}

} // namespace thawslip::layout

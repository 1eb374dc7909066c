#include "layout/areas/row_columns.h"

#include "layout/areas/entry.h"
#include "layout/tracks.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// Puts what `cell` says behind what `into` says, with a dot between words.
void append(wording::Paragraph& into, const wording::Paragraph& cell) {
    if (!cell.spans.empty() || !cell.label.empty()) {
        if (!into.spans.empty()) {
            into.spans.push_back({" · ", wording::Emphasis::Plain});
        }
        if (!cell.label.empty()) {
            into.spans.push_back({cell.label + " ", wording::Emphasis::Strong});
        }
        into.spans.insert(into.spans.end(), cell.spans.begin(), cell.spans.end());
    }
    into.boxes.insert(into.boxes.end(), cell.boxes.begin(), cell.boxes.end());
    for (const auto& below : cell.below) {
        append(into, below);
    }
}

/// The width of each column's widest cell, in em.
std::vector<double> widest_cells(const Content& content, const TextArea& area) {
    std::vector<double> widest(area.table.size());
    for (const auto& entry : content.entries()) {
        for (std::size_t i = 0; i < entry.cells.size(); ++i) {
            widest[i] = std::max(widest[i], entry_width(entry.cells[i]));
        }
    }
    return widest;
}

} // namespace

TableColumns table_columns(const Content& content, const TextArea& area, Length em, Length width) {
    std::vector<SpanNeed> needs;
    for (const double widest : widest_cells(content, area)) {
        needs.push_back({static_cast<int>(needs.size()), 1, em * widest});
    }
    const auto bands = resolve_columns(area.table, em * table_gap, width, needs);
    TableColumns columns;
    for (std::size_t i = 0; i < area.table.size(); ++i) {
        columns.start.push_back(bands.start[i] / em);
        columns.width.push_back(bands.length[i] / em);
        columns.leaves_room.push_back(!area.table_align.empty() &&
                                      area.table_align[i] == Align::Right);
    }
    columns.too_narrow = bands.overflow > Length::points(1e-6);
    return columns;
}

double table_natural_width(const Content& content, const TextArea& area, Length em) {
    const auto widest = widest_cells(content, area);
    if (std::ranges::all_of(widest, [](double width) { return width <= 0.0; })) {
        return 0.0;
    }
    double given = table_gap * static_cast<double>(area.table.size() - 1);
    double shares = 0.0;
    double one_share = 0.0;
    double whole = 0.0; // what a column of so many percent asks for
    for (std::size_t i = 0; i < area.table.size(); ++i) {
        const auto& track = area.table[i];
        switch (track.kind) {
        case Track::Kind::Fixed: given += track.length / em; break;
        case Track::Kind::Content: given += widest[i]; break;
        case Track::Kind::Percent: whole = std::max(whole, widest[i] * 100.0 / track.amount); break;
        case Track::Kind::Share:
            shares += track.amount;
            one_share = std::max(one_share, widest[i] / track.amount);
            break;
        }
    }
    return std::max(given + one_share * shares, whole);
}

std::vector<wording::Paragraph> cells_for(const wording::Paragraph& row, const TextArea& area) {
    auto cells = row.cells;
    while (cells.size() > area.table.size()) {
        const auto extra = std::move(cells.back());
        cells.pop_back();
        append(cells.back(), extra);
    }
    return cells;
}

wording::Paragraph without_columns(const wording::Paragraph& row) {
    wording::Paragraph line;
    line.role = row.role;
    line.marker = row.cells.empty() ? row.marker : row.cells.front().marker;
    for (const auto& cell : row.cells) {
        append(line, cell);
    }
    for (const auto& below : row.below) {
        append(line, below);
    }
    return line;
}

} // namespace thawslip::layout

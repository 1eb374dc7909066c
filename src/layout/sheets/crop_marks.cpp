#include "layout/sheets/crop_marks.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

constexpr Length least_offset = Length::millimetres(0.5);
constexpr Length least_length = Length::millimetres(1);
/// Lines nearer to each other than this are one cut.
constexpr Length same_line = Length::millimetres(0.05);

struct Span {
    Length from;
    Length to;
};

/// Where cells begin and end in one direction, in order, each line once.
std::vector<Length> cut_lines(Length first, Length size, Length pitch, int count) {
    std::vector<Length> lines;
    for (int i = 0; i < count; ++i) {
        for (const Length line : {first + pitch * i, first + pitch * i + size}) {
            if (lines.empty() || line - lines.back() > same_line) {
                lines.push_back(line);
            }
        }
    }
    return lines;
}

/// The mark before the cells, which begin at `cells`, on paper that the printer reaches from
/// `reached` on.
Span mark_before(Length cells, Length reached) {
    const Length room = cells - reached;
    if (room < least_offset + least_length) {
        return {reached, reached + crop_mark_length};
    }
    const Length offset = std::clamp(room - crop_mark_length, least_offset, crop_mark_offset);
    const Length length = std::min(crop_mark_length, room - offset);
    return {cells - offset - length, cells - offset};
}

/// The same after the cells: the picture turned round.
Span mark_after(Length cells, Length reached) {
    const Span mirrored = mark_before(-cells, -reached);
    return {-mirrored.to, -mirrored.from};
}

/// Whether a mark on this line is wholly within what the printer reaches.
bool is_reached(Length line, Span reached) {
    const Length half = crop_mark_thickness / 2;
    return line - half >= reached.from && line + half <= reached.to;
}

Rule upright(Length x, Span y) {
    return {{{x - crop_mark_thickness / 2, y.from}, {crop_mark_thickness, y.to - y.from}}};
}

Rule level(Length y, Span x) {
    return {{{x.from, y - crop_mark_thickness / 2}, {x.to - x.from, crop_mark_thickness}}};
}

} // namespace

std::vector<Rule> crop_marks(const Stock& stock, const Insets& insets) {
    std::vector<Rule> marks;
    if (!stock.cut) {
        return marks;
    }
    const Rect block = stock.block();
    const Rect area = printable_area(stock.sheet, insets);
    const Span across{area.left(), area.right()};
    const Span down{area.top(), area.bottom()};
    for (const Length x :
         cut_lines(stock.first.x, stock.cell.width, stock.pitch.width, stock.columns)) {
        if (is_reached(x, across)) {
            marks.push_back(upright(x, mark_before(block.top(), down.from)));
            marks.push_back(upright(x, mark_after(block.bottom(), down.to)));
        }
    }
    for (const Length y :
         cut_lines(stock.first.y, stock.cell.height, stock.pitch.height, stock.rows)) {
        if (is_reached(y, down)) {
            marks.push_back(level(y, mark_before(block.left(), across.from)));
            marks.push_back(level(y, mark_after(block.right(), across.to)));
        }
    }
    return marks;
}

std::vector<Rule> half_marks(const Stock& stock, int cell) {
    if (!stock.cut) {
        return {};
    }
    const Rect whole = stock.cell_at(cell);
    const Rect half = stock.part_at(cell, Part::SecondHalf);
    const Length length = std::min(crop_mark_length, stock.safe_margin);
    if (half.left() > whole.left()) {
        return {upright(half.left(), {whole.top(), whole.top() + length}),
                upright(half.left(), {whole.bottom() - length, whole.bottom()})};
    }
    return {level(half.top(), {whole.left(), whole.left() + length}),
            level(half.top(), {whole.right() - length, whole.right()})};
}

} // namespace thawslip::layout

#include "layout/sheets/ruler.h"

#include "base/utf8.h"
#include "layout/sheets/paper.h"
#include "layout/sheets/pen.h"
#include "layout/sheets/ruler_text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::layout {
namespace {

using namespace literals;

constexpr Length cross_from_edge = 30_mm;
constexpr Length cross_arm = 5_mm;
constexpr Length ruler_from_edge = 18_mm;
constexpr Length ruler_keeps_from_corner = 36_mm; // clear of the crosses
constexpr Length words_from_edge = 38_mm;
constexpr int steps = 12; // of a stair: inkjets may leave 12.7 mm free at the foot
constexpr Length step_width = 4_mm;

constexpr Hand small_hand{8_pt, typeset::Weight::Regular, Align::Centre};
constexpr Hand name_hand{11_pt, typeset::Weight::Bold};

/// A side of the paper. Things along it are placed by how far along it they are (from the left,
/// from above) and how deep inside the paper.
enum class Side { Top, Right, Bottom, Left };

class RulerPage {
public:
    RulerPage(Size page, const typeset::FontSet& fonts)
        : page_{page}, frame_{page, {}, {}}, pen_{frame_, fonts} {}

    Result<Frame, std::string> draw() {
        for (const Side side : {Side::Top, Side::Left}) {
            draw_ruler(side, 1_mm, {{10, 4_mm}, {5, 3_mm}, {1, 2_mm}});
        }
        for (const Side side : {Side::Bottom, Side::Right}) {
            draw_ruler(side, 0.0625_in,
                       {{16, 4_mm}, {8, 3.2_mm}, {4, 2.6_mm}, {2, 2_mm}, {1, 1.4_mm}});
        }
        for (const Side side : {Side::Top, Side::Right, Side::Bottom, Side::Left}) {
            draw_stair(side);
        }
        draw_crosses();
        write_instructions();
        if (pen_.fault()) {
            return Failure{"the faces cannot set " + name_of(pen_.fault()->character)};
        }
        return frame_;
    }

private:
    struct Division {
        int every; ///< so many ticks
        Length length;
    };

    static bool is_level(Side side) { return side == Side::Top || side == Side::Bottom; }
    Length length_of(Side side) const { return is_level(side) ? page_.width : page_.height; }

    Point at(Side side, Length along, Length deep) const {
        switch (side) {
        case Side::Top: return {along, deep};
        case Side::Bottom: return {along, page_.height - deep};
        case Side::Left: return {deep, along};
        case Side::Right: return {page_.width - deep, along};
        }
        return {};
    }

    void draw_line(Point a, Point b) {
        if (a.y == b.y) {
            pen_.draw_across(std::min(a.x, b.x), std::max(a.x, b.x), a.y, line_thickness);
        } else {
            pen_.draw_down(std::min(a.y, b.y), std::max(a.y, b.y), a.x, line_thickness);
        }
    }

    /// A number with its middle at this place.
    void write_number(int number, Point middle) {
        pen_.write(std::to_string(number), {middle.x, middle.y + small_hand.size * 0.35},
                   small_hand);
    }

    /// \param divisions  longest first
    void draw_ruler(Side side, Length spacing, const std::vector<Division>& divisions) {
        const Length from = ruler_keeps_from_corner;
        const Length to = length_of(side) - ruler_keeps_from_corner;
        if (to <= from) {
            return; // paper so small that its crosses are all there is room for
        }
        draw_line(at(side, from, ruler_from_edge), at(side, to, ruler_from_edge));
        const int first = static_cast<int>(std::ceil(from / spacing));
        const int last = static_cast<int>(std::floor(to / spacing));
        const int longest = divisions.front().every;
        for (int n = first; n <= last; ++n) {
            const auto division = std::ranges::find_if(
                divisions, [n](const Division& d) { return n % d.every == 0; });
            const Length along = spacing * n;
            draw_line(at(side, along, ruler_from_edge),
                      at(side, along, ruler_from_edge + division->length));
            if (n % longest == 0) {
                const int number = longest == 16 ? n / 16 : n; // inches, or millimetres
                write_number(number, at(side, along, ruler_from_edge + 6.5_mm));
            }
        }
    }

    void draw_stair(Side side) {
        const Length start = length_of(side) / 2 - step_width * steps / 2;
        for (int n = 1; n <= steps; ++n) {
            const Length along = start + step_width * (n - 1);
            const Length deep = Length::millimetres(n);
            draw_line(at(side, along, deep), at(side, along + step_width * 0.9, deep));
            write_number(n, at(side, along + step_width * 0.45, 15_mm));
        }
    }

    void draw_crosses() {
        char name = 'A';
        for (const Point middle : ruler_crosses(page_)) {
            pen_.draw_across(middle.x - cross_arm, middle.x + cross_arm, middle.y, line_thickness);
            pen_.draw_down(middle.y - cross_arm, middle.y + cross_arm, middle.x, line_thickness);
            pen_.write(std::string{name++}, {middle.x + 1.2_mm, middle.y - 1.2_mm}, name_hand);
        }
    }

    Rect words_area() const { return Rect{{}, page_}.inset(words_from_edge); }

    /// Steps, which begin with their number, stand apart; what belongs to a step follows it.
    static Length gap_before(const std::string& line) {
        const bool is_step = line[0] >= '2' && line[0] <= '9';
        return is_step ? word_hand.size * 0.7 : Length{};
    }

    /// The boxes stand after the step that asks for what is written into them.
    void write_instructions() {
        const Rect area = words_area();
        const auto lines = ruler_instructions(page_);
        constexpr Length row = 7_mm;
        constexpr Length least_width = 62_mm; // the row of boxes
        if (area.size.width < least_width) {
            return write_where_to_find_them();
        }
        Length height = row * 5;
        for (const auto& line : lines) {
            height += gap_before(line) + pen_.height_of(line, area.size.width, word_hand);
        }
        if (height > area.size.height) {
            return write_where_to_find_them();
        }
        Length y = area.top();
        for (std::size_t i = 0; i < lines.size(); ++i) {
            y = pen_.write_paragraph(lines[i], {area.left(), y + gap_before(lines[i])},
                                     area.size.width, word_hand);
            if (i == 1) {
                draw_boxes({area.left(), y}, row);
                y += row * 5;
            }
        }
    }

    void draw_boxes(Point top_left, Length row) {
        constexpr Length width = 18_mm;
        const Length columns[] = {top_left.x + 10_mm, top_left.x + 10_mm + width + 10_mm};
        const char* heads[] = {"across", "down"};
        for (const int i : {0, 1}) {
            pen_.write(heads[i], {columns[i], top_left.y + row * 0.7}, word_hand);
        }
        for (int n = 0; n < 4; ++n) {
            const Length y = top_left.y + row * (n + 1);
            pen_.write(std::string{static_cast<char>('A' + n)}, {top_left.x, y + row * 0.6},
                       name_hand);
            for (const Length x : columns) {
                frame_.items.push_back(Outline{{{x, y}, {width, row * 0.8}}, line_thickness, {}});
                pen_.write("mm", {x + width + 1_mm, y + row * 0.6}, word_hand);
            }
        }
    }

    void write_where_to_find_them() {
        const Point middle{page_.width / 2, page_.height / 2};
        pen_.write("how to read this page:", middle, small_hand);
        pen_.write("thawslip stock ruler", {middle.x, middle.y + small_hand.size * 1.3},
                   small_hand);
    }

    Size page_;
    Frame frame_;
    Pen pen_;
};

constexpr const char* how_to_read_crosses =
    "2. Lay a ruler on the paper. Measure from the paper's left edge (across), then from its upper "
    "edge (down), to the middle of each cross, to a quarter of a millimetre:";
constexpr const char* how_to_read_stairs =
    "3. In the middle of each edge stands a stair. The lowest number whose line is there says how "
    "many millimetres the printer leaves free.";

/// `paper = "a4"`, or the measures of a paper without a name.
std::string paper_setting(Size page) {
    for (const auto& paper : papers()) {
        for (const char* way : {"", " landscape"}) {
            const auto name = std::string{paper.name} + way;
            if (paper_size(name) == page) {
                return fmt::format("paper = \"{}\"", name);
            }
        }
    }
    const Unit unit = unit_of(page);
    return fmt::format("sheet = [\"{}\", \"{}\"]", ruler_text(page.width, unit),
                       ruler_text(page.height, unit));
}

} // namespace

std::array<Point, 4> ruler_crosses(Size page) {
    const auto far = [](Length side) {
        constexpr Length grid = 5_mm;
        return grid * std::floor((side - cross_from_edge) / grid + 1e-9);
    };
    const Length near = cross_from_edge;
    return {Point{near, near},
            {far(page.width), near},
            {near, far(page.height)},
            {far(page.width), far(page.height)}};
}

std::vector<std::string> ruler_instructions(Size page) {
    const auto crosses = ruler_crosses(page);
    const auto mm = [](Length length) { return ruler_text(length, Unit::Millimetre); };
    std::vector<std::string> lines{
        "1. Print this page at actual size (100 %), never fitted to the page.",
        how_to_read_crosses,
        fmt::format("As asked they stand {} and {} across, {} and {} down.", mm(crosses[0].x),
                    mm(crosses[3].x), mm(crosses[0].y), mm(crosses[3].y)),
        how_to_read_stairs,
        "4. Write what you measured into the settings file, like this:",
        "[[printer]]",
        paper_setting(page),
    };
    char name = 'a';
    for (const Point cross : crosses) {
        lines.push_back(
            fmt::format("cross_{} = [\"{}\", \"{}\"]", name++, mm(cross.x), mm(cross.y)));
    }
    lines.emplace_back("unprinted = [\"4 mm\", \"4 mm\", \"4 mm\", \"4 mm\"]");
    lines.emplace_back("The last line goes round from the top: top, right, bottom, left.");
    return lines;
}

Result<Frame, std::string> ruler_page(Size page, const typeset::FontSet& fonts) {
    if (!(page.width >= smallest_ruler_page.width && page.height >= smallest_ruler_page.height)) {
        return Failure{fmt::format("the paper is {}, expected at least {} for a ruler page",
                                   ruler_text(page, Unit::Millimetre),
                                   ruler_text(smallest_ruler_page, Unit::Millimetre))};
    }
    return RulerPage{page, fonts}.draw();
}

} // namespace thawslip::layout

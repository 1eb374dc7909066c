#include "layout/sheets/stock_drawing.h"

#include "base/utf8.h"
#include "layout/sheets/crop_marks.h"
#include "layout/sheets/dimensions.h"
#include "layout/sheets/pen.h"
#include "layout/sheets/ruler_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <vector>

namespace thawslip::layout {
namespace {

using namespace literals;

constexpr Length margin = 12_mm;
constexpr Length sheet_thickness = 1_pt;
constexpr Length level_height = 6_mm; // from one line of dimensions to the next
constexpr int levels = 3;
constexpr Length tick = 2_mm;

constexpr Hand title_hand{14_pt, typeset::Weight::Bold};
constexpr Hand letter_hand{9_pt, typeset::Weight::Bold, Align::Centre};

/// Reductions that a person can reckon with.
constexpr double reductions[] = {1, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10, 15, 20, 30, 40, 50, 100};

/// Draws one stock. The members are the page in the order in which it fills.
class Drawing {
public:
    Drawing(const Stock& stock, Size page, const typeset::FontSet& fonts)
        : stock_{stock}, fonts_{fonts},
          dimensions_{dimensions(stock)}, frame_{page, {}, {}}, pen_{frame_, fonts} {}

    Result<Frame, std::string> draw() {
        const Length below_words = write_words();
        const Length above_legend = write_legend();
        choose_scale(below_words, above_legend);
        write_scale();
        draw_sheet();
        for (std::size_t i = 0; i < dimensions_.size(); ++i) {
            draw_dimension(dimensions_[i], letter(i));
        }
        if (pen_.fault()) {
            return Failure{fmt::format("the faces cannot set {} of the name or description",
                                       name_of(pen_.fault()->character))};
        }
        return frame_;
    }

private:
    static std::string letter(std::size_t i) {
        return {static_cast<char>('a' + static_cast<int>(i))}; // twelve dimensions at most
    }

    Length inner_width() const { return frame_.sheet.width - margin * 2; }

    Length write_words() {
        Length y = pen_.write_paragraph(stock_.name, {margin, margin}, inner_width(), title_hand);
        if (!stock_.about.empty()) {
            y = pen_.write_paragraph(stock_.about, {margin, y}, inner_width(), word_hand);
        }
        for (const auto& line : in_words(stock_)) {
            y = pen_.write_paragraph(line, {margin, y}, inner_width(), word_hand);
        }
        return y;
    }

    /// Two columns of dimensions at the foot: across on the left, down on the right.
    /// \returns where they begin
    Length write_legend() {
        const Length width = (inner_width() - 6_mm) / 2;
        Length height[2];
        for (const auto way : {0, 1}) {
            for (const auto& line : legend(way)) {
                height[way] += pen_.height_of(line, width, word_hand);
            }
        }
        const Length top = frame_.sheet.height - margin - std::max(height[0], height[1]);
        for (const auto way : {0, 1}) {
            Length y = top;
            for (const auto& line : legend(way)) {
                const Length x = margin + (width + 6_mm) * way;
                y = pen_.write_paragraph(line, {x, y}, width, word_hand);
            }
        }
        return top;
    }

    /// "b  cell, across: 99 mm"; `way` 0 is across, 1 is down.
    std::vector<std::string> legend(int way) const {
        std::vector<std::string> lines;
        for (std::size_t i = 0; i < dimensions_.size(); ++i) {
            const auto& dimension = dimensions_[i];
            if ((dimension.direction == Dimension::Direction::Down) == (way == 1)) {
                lines.push_back(fmt::format("{}  {}: {}", letter(i), dimension.what,
                                            ruler_text(dimension.length(), stock_)));
            }
        }
        return lines;
    }

    void choose_scale(Length top, Length bottom) {
        const Length beside = level_height * levels + 2_mm;
        const Rect room{{margin + beside, top + beside + 4_mm},
                        {inner_width() - beside, bottom - top - beside - 8_mm}};
        for (const double reduction : reductions) {
            reduction_ = reduction;
            if (stock_.sheet.width / reduction <= room.size.width &&
                stock_.sheet.height / reduction <= room.size.height) {
                break;
            }
        }
        origin_ = {room.left() + (room.size.width - scaled(stock_.sheet.width)) / 2,
                   room.top() + (room.size.height - scaled(stock_.sheet.height)) / 2};
    }

    void write_scale() {
        const auto text = reduction_ == 1 ? std::string{"drawn at full size"}
                                          : fmt::format("drawn at 1 : {:g}", reduction_);
        pen_.write(text, {frame_.sheet.width - margin, margin + 10_pt},
                   {word_hand.size, word_hand.weight, Align::Right});
    }

    Length scaled(Length length) const { return length / reduction_; }
    Point on_page(Point p) const { return {origin_.x + scaled(p.x), origin_.y + scaled(p.y)}; }
    Rect on_page(const Rect& r) const {
        return {on_page(r.origin), {scaled(r.size.width), scaled(r.size.height)}};
    }

    void draw_sheet() {
        frame_.items.push_back(Outline{on_page(Rect{{}, stock_.sheet}), sheet_thickness, {}});
        for (int cell = 0; cell < stock_.cells(); ++cell) {
            frame_.items.push_back(Outline{on_page(stock_.cell_at(cell)), line_thickness,
                                           scaled(stock_.corner_radius)});
            write_number(cell);
        }
        frame_.items.push_back(Outline{on_page(stock_.safe_at(0)), line_thickness, {}});
        for (const auto& mark : crop_marks(stock_)) {
            Rect area = on_page(mark.area); // as long as drawn to scale, but no thinner
            area.size.width = std::max(area.size.width, line_thickness);
            area.size.height = std::max(area.size.height, line_thickness);
            frame_.items.push_back(Rule{area});
        }
    }

    /// The cell's number in its middle, where there is room for one that can be read.
    void write_number(int cell) {
        const auto number = std::to_string(cell + 1);
        const Rect area = on_page(stock_.cell_at(cell));
        const Hand hand{std::clamp(area.size.height * 0.4, 7_pt, 14_pt), typeset::Weight::Regular,
                        Align::Centre};
        if (hand.size > area.size.height || pen_.width_of(number, hand) > area.size.width) {
            return;
        }
        const double rise = fonts_.metrics(hand.weight).cap_height / 2;
        pen_.write(number,
                   {area.left() + area.size.width / 2,
                    area.top() + area.size.height / 2 + hand.size * rise},
                   hand);
    }

    void draw_dimension(const Dimension& dimension, const std::string& name) {
        const Length away = level_height * (dimension.level + 1) - 2_mm;
        const Length middle = scaled((dimension.from + dimension.to) / 2);
        if (dimension.direction == Dimension::Direction::Across) {
            const Length y = origin_.y - away;
            const Length from = origin_.x + scaled(dimension.from);
            const Length to = origin_.x + scaled(dimension.to);
            pen_.draw_across(from, to, y, line_thickness);
            pen_.draw_down(y - tick / 2, y + tick / 2, from, line_thickness);
            pen_.draw_down(y - tick / 2, y + tick / 2, to, line_thickness);
            pen_.write(name, {origin_.x + middle, y - 0.8_mm}, letter_hand);
        } else {
            const Length x = origin_.x - away;
            const Length from = origin_.y + scaled(dimension.from);
            const Length to = origin_.y + scaled(dimension.to);
            pen_.draw_down(from, to, x, line_thickness);
            pen_.draw_across(x - tick / 2, x + tick / 2, from, line_thickness);
            pen_.draw_across(x - tick / 2, x + tick / 2, to, line_thickness);
            pen_.write(name, {x - 2_mm, origin_.y + middle + 1_mm}, letter_hand);
        }
    }

    const Stock& stock_;
    const typeset::FontSet& fonts_;
    std::vector<Dimension> dimensions_;
    Frame frame_;
    Pen pen_;
    double reduction_ = 1;
    Point origin_; ///< the sheet's top left corner on the page
};

} // namespace

Result<Frame, std::string> stock_drawing(const Stock& stock, Size page,
                                         const typeset::FontSet& fonts) {
    if (!(page.width >= smallest_drawing_page.width - 0.1_mm &&
          page.height >= smallest_drawing_page.height - 0.1_mm)) {
        return Failure{fmt::format("the page is {}, expected at least {}",
                                   ruler_text(page, Unit::Millimetre),
                                   ruler_text(smallest_drawing_page, Unit::Millimetre))};
    }
    return Drawing{stock, page, fonts}.draw();
}

} // namespace thawslip::layout

#include "render/page_content.h"

#include "render/drawn_radius.h"
#include "render/module_runs.h"
#include "render/number.h"
#include "render/text_show.h"

#include <cmath>
#include <initializer_list>
#include <optional>
#include <string_view>

namespace thawslip::render {
namespace {

constexpr int text_decimals = 2; // of a point: 0.0018 mm; show_text() makes up for it along x

/// Control points this far along the tangents make a cubic curve a quarter of a circle, right to
/// 0.03 % of its radius: 4/3 · (√2 − 1).
constexpr double quarter_circle = 0.5522847498307936;

double rounded(double value, int decimals) {
    const double units = std::pow(10.0, decimals);
    return std::round(value * units) / units;
}

class Page {
public:
    explicit Page(const layout::Frame& frame, PdfFonts& fonts)
        : height_{frame.sheet.height}, fonts_{fonts} {
        correct(frame.correction);
    }

    void draw(const layout::Text& text);
    void draw(const layout::Rule& rule);
    void draw(const layout::Outline& outline);
    void draw(const layout::ModuleGrid& grid);
    std::string finish();

private:
    /// What the operators so far have opened: a text object, or a path that is not yet filled.
    enum class Open { Nothing, Text, Path };

    double up(Length y) const { return (height_ - y).in_points(); }
    void open(Open wanted);
    void correct(const layout::Correction& correction);
    void set_tone(layout::Tone tone);
    void set_font(typeset::FaceId face, double size);
    void set_line_width(double width);
    void rectangle(const Rect& area);
    void rounded_rectangle(const Rect& area, double radius);
    void numbers(std::initializer_list<double> values, int decimals, std::string_view operation);

    Length height_;
    PdfFonts& fonts_;
    std::string out_;
    Open open_ = Open::Nothing;
    double line_x_ = 0.0, line_y_ = 0.0; ///< where the text object's line begins, as written
    std::optional<typeset::FaceId> face_;
    double size_ = 0.0;
    layout::Tone tone_ = layout::Tone::Black; ///< PDF's own at the start of a page
    double line_width_ = 1.0;                 ///< PDF's own at the start of a page
};

void Page::numbers(std::initializer_list<double> values, int decimals, std::string_view operation) {
    for (const double value : values) {
        append_number(out_, value, decimals);
        out_ += ' ';
    }
    out_.append(operation).append(1, '\n');
}

void Page::open(Open wanted) {
    if (open_ == wanted) {
        return;
    }
    if (open_ == Open::Text) {
        out_ += "ET\n";
    } else if (open_ == Open::Path) {
        out_ += "f\n";
    }
    if (wanted == Open::Text) {
        out_ += "BT\n";
        line_x_ = line_y_ = 0.0;
    } else {
        set_tone(layout::Tone::Black); // text alone is ever white; inside a path it cannot be said
    }
    open_ = wanted;
}

/// Correction's formula with y turned on both sides: with Y = height − y,
///     x' = scale_x·x −    skew·Y + (skew·height + offset.x)
///     Y' = −skew_y·x + scale_y·Y + (height·(1 − scale_y) − offset.y)
void Page::correct(const layout::Correction& correction) {
    if (correction == layout::Correction{}) {
        return;
    }
    const double height = height_.in_points();
    numbers({correction.scale_x, -correction.skew_y, -correction.skew, correction.scale_y,
             correction.offset.x.in_points() + correction.skew * height,
             height * (1.0 - correction.scale_y) - correction.offset.y.in_points()},
            matrix_decimals, "cm");
}

void Page::set_font(typeset::FaceId face, double size) {
    if (face_ == face && size_ == size) {
        return;
    }
    face_ = face;
    size_ = size;
    out_ += '/' + PdfFonts::resource_name(face) + ' ';
    numbers({size}, length_decimals, "Tf");
}

void Page::set_tone(layout::Tone tone) {
    if (tone_ != tone) {
        tone_ = tone;
        out_ += tone == layout::Tone::White ? "1 g\n" : "0 g\n";
    }
}

void Page::draw(const layout::Text& text) {
    open(Open::Text);
    set_tone(text.tone);
    set_font(text.run.face, rounded(text.size.in_points(), length_decimals));
    const double x = rounded(text.baseline.x.in_points(), text_decimals);
    const double y = rounded(up(text.baseline.y), text_decimals);
    numbers({x - line_x_, y - line_y_}, text_decimals, "Td");
    line_x_ = x;
    line_y_ = y;
    show_text(out_, text, {x, size_}, fonts_);
}

void Page::rectangle(const Rect& area) {
    numbers({area.left().in_points(), up(area.bottom()), area.size.width.in_points(),
             area.size.height.in_points()},
            length_decimals, "re");
}

void Page::draw(const layout::Rule& rule) {
    open(Open::Path);
    rectangle(rule.area);
}

void Page::set_line_width(double width) {
    if (line_width_ != width) {
        line_width_ = width;
        numbers({width}, length_decimals, "w");
    }
}

void Page::rounded_rectangle(const Rect& area, double radius) {
    const double left = area.left().in_points(), right = area.right().in_points();
    const double bottom = up(area.bottom()), top = up(area.top());
    const double near = radius * (1.0 - quarter_circle); // of a control point to the corner
    constexpr int d = length_decimals;
    numbers({left + radius, bottom}, d, "m");
    numbers({right - radius, bottom}, d, "l");
    numbers({right - near, bottom, right, bottom + near, right, bottom + radius}, d, "c");
    numbers({right, top - radius}, d, "l");
    numbers({right, top - near, right - near, top, right - radius, top}, d, "c");
    numbers({left + radius, top}, d, "l");
    numbers({left + near, top, left, top - near, left, top - radius}, d, "c");
    numbers({left, bottom + radius}, d, "l");
    numbers({left, bottom + near, left + near, bottom, left + radius, bottom}, d, "c");
}

void Page::draw(const layout::Outline& outline) {
    open(Open::Nothing);
    set_line_width(outline.thickness.in_points());
    const double radius = drawn_radius(outline).in_points();
    if (radius > 0.0) {
        rounded_rectangle(outline.area, radius);
        out_ += "s\n";
    } else {
        rectangle(outline.area);
        out_ += "S\n";
    }
}

/// All modules are one path, so that no reader draws seams between neighbours; and in nearly whole
/// numbers under a scale of one module, which pack well.
///
/// Adobe's scan conversion, and Poppler's and MuPDF's after it, inks every dot that a shape
/// touches, be it by an edge that falls exactly between two dots: a module that ends there would
/// grow by a dot. So each run ends a ten-thousandth of a module inside its edges.
void Page::draw(const layout::ModuleGrid& grid) {
    constexpr double inset = 0.0001; // module
    open(Open::Nothing);
    const double module = grid.module.in_points();
    out_ += "q\n";
    numbers({module, 0.0, 0.0, -module, grid.top_left.x.in_points() + inset * module,
             up(grid.top_left.y) - inset * module},
            matrix_decimals, "cm");
    for (const auto& run : module_runs(grid)) {
        for (const int value : {run.x, run.y}) {
            append_whole(out_, value);
            out_ += ' ';
        }
        if (run.length > 1) {
            append_whole(out_, run.length - 1);
        }
        out_ += ".9998 .9998 re\n"; // shorter by the inset at both ends
    }
    out_ += "f\nQ\n";
}

std::string Page::finish() {
    open(Open::Nothing);
    return std::move(out_);
}

} // namespace

std::string page_content(const layout::Frame& frame, PdfFonts& fonts) {
    Page page{frame, fonts};
    for (const auto& item : frame.items) {
        std::visit([&page](const auto& drawn) { page.draw(drawn); }, item);
    }
    return page.finish();
}

} // namespace thawslip::render

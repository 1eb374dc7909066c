#include "render/page_content.h"

#include "render/module_runs.h"
#include "render/number.h"
#include "render/text_show.h"

#include <cmath>
#include <initializer_list>
#include <optional>

namespace thawslip::render {
namespace {

/// Lengths on the page are told to a thousandth of a point: a thirtieth of a dot at 2400 dpi.
constexpr int decimals = 3;

/// Writes operators one after the other, items of a kind together.
class Drawing {
public:
    Drawing(const layout::Frame& frame, PdfFonts& fonts)
        : height_{frame.sheet.height.in_points()}, fonts_{fonts} {}

    void correct(const layout::Correction& correction) {
        if (correction == layout::Correction{}) {
            return;
        }
        // x' and y' of Correction, with Y = height - y put in on both sides.
        precise({correction.scale_x, -correction.skew_y, -correction.skew, correction.scale_y,
                 correction.skew * height_ + correction.offset.x.in_points(),
                 height_ * (1.0 - correction.scale_y) - correction.offset.y.in_points()});
        out_ += "cm\n";
    }

    void operator()(const layout::Text& text) {
        begin(Mode::Text);
        content_.faces.insert(text.run.face);
        const double size = text.size.in_points();
        if (face_ != text.run.face || size != size_) {
            face_ = text.run.face;
            size_ = size;
            out_ += "/F";
            append_whole(out_, text.run.face);
            out_ += ' ';
            append_number(out_, size, 4);
            out_ += " Tf\n";
        }
        move_to(text.baseline.x.in_points(), height_ - text.baseline.y.in_points());
        show(out_, text, fonts_);
    }

    void operator()(const layout::Rule& rule) {
        begin(Mode::Fill);
        const auto& area = rule.area;
        numbers({area.left().in_points(), height_ - area.bottom().in_points(),
                 area.size.width.in_points(), area.size.height.in_points()});
        out_ += "re\n";
    }

    void operator()(const layout::Outline& outline) {
        begin(Mode::None);
        numbers({outline.thickness.in_points()});
        out_ += "w\n";
        const auto& area = outline.area;
        if (outline.corner_radius > Length{}) {
            rounded(area, outline.corner_radius.in_points());
        } else {
            numbers({area.left().in_points(), height_ - area.bottom().in_points(),
                     area.size.width.in_points(), area.size.height.in_points()});
            out_ += "re S\n";
        }
    }

    void operator()(const layout::ModuleGrid& grid) {
        begin(Mode::None);
        const double module = grid.module.in_points();
        out_ += "q\n";
        precise({module, 0.0, 0.0, -module, grid.top_left.x.in_points(),
                 height_ - grid.top_left.y.in_points()});
        out_ += "cm\n";
        for (const auto& run : module_runs(grid)) {
            for (const int value : {run.x, run.y, run.length, 1}) {
                append_whole(out_, value);
                out_ += ' ';
            }
            out_ += "re\n";
        }
        out_ += "f\nQ\n";
    }

    PageContent take() {
        begin(Mode::None);
        content_.operators = std::move(out_);
        return std::move(content_);
    }

private:
    enum class Mode { None, Text, Fill };

    void begin(Mode mode) {
        if (mode == mode_) {
            return;
        }
        if (mode_ == Mode::Text) {
            out_ += "ET\n";
        } else if (mode_ == Mode::Fill) {
            out_ += "f\n";
        }
        if (mode == Mode::Text) {
            out_ += "BT\n";
            x_ = 0.0;
            y_ = 0.0;
        }
        mode_ = mode;
    }

    /// Moves by what was written so far, not by what was meant: rounding never adds up.
    void move_to(double x, double y) {
        const auto rounded = [](double value) { return std::round(value * 1000.0) / 1000.0; };
        const double dx = rounded(x - x_);
        const double dy = rounded(y - y_);
        x_ += dx;
        y_ += dy;
        numbers({dx, dy});
        out_ += "Td\n";
    }

    void rounded(const Rect& area, double radius) {
        // A quarter circle by one cubic curve: 4/3·(√2 - 1) of the radius, the usual approximation.
        const double bend = radius * (1.0 - 0.5522847498);
        const double l = area.left().in_points();
        const double r = area.right().in_points();
        const double b = height_ - area.bottom().in_points();
        const double t = height_ - area.top().in_points();
        numbers({l + radius, b});
        out_ += "m\n";
        numbers({r - radius, b});
        out_ += "l\n";
        numbers({r - bend, b, r, b + bend, r, b + radius});
        out_ += "c\n";
        numbers({r, t - radius});
        out_ += "l\n";
        numbers({r, t - bend, r - bend, t, r - radius, t});
        out_ += "c\n";
        numbers({l + radius, t});
        out_ += "l\n";
        numbers({l + bend, t, l, t - bend, l, t - radius});
        out_ += "c\n";
        numbers({l, b + radius});
        out_ += "l\n";
        numbers({l, b + bend, l + bend, b, l + radius, b});
        out_ += "c s\n";
    }

    void numbers(std::initializer_list<double> values) {
        for (const double value : values) {
            append_number(out_, value, decimals);
            out_ += ' ';
        }
    }

    /// Matrices multiply what comes after them, so they are told more exactly.
    void precise(std::initializer_list<double> values) {
        for (const double value : values) {
            append_number(out_, value, 6);
            out_ += ' ';
        }
    }

    double height_;
    PdfFonts& fonts_;
    PageContent content_;
    std::string out_;
    Mode mode_ = Mode::None;
    std::optional<typeset::FaceId> face_;
    double size_ = 0.0;
    double x_ = 0.0;
    double y_ = 0.0;
};

} // namespace

PageContent page_content(const layout::Frame& frame, PdfFonts& fonts) {
    Drawing drawing{frame, fonts};
    drawing.correct(frame.correction);
    for (const auto& item : frame.items) {
        std::visit(drawing, item);
    }
    return drawing.take();
}

} // namespace thawslip::render

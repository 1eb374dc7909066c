#include "render/text_show.h"

#include "render/number.h"

#include <cmath>

namespace thawslip::render {
namespace {

void append_code(std::string& out, std::uint16_t code) {
    constexpr std::string_view digits = "0123456789abcdef";
    for (int shift = 12; shift >= 0; shift -= 4) {
        out += digits[(static_cast<unsigned>(code) >> shift) & 0xFU];
    }
}

/// One TJ array while it is written: codes between < and >, adjustments between the strings.
class ShowArray {
public:
    explicit ShowArray(std::string& out) : out_{out} {}

    void open() {
        if (!open_) {
            out_ += '[';
            open_ = true;
        }
    }
    void code(std::uint16_t code) {
        open();
        if (!in_string_) {
            out_ += '<';
            in_string_ = true;
        }
        append_code(out_, code);
    }
    void adjust(double thousandths, int decimals) {
        open();
        end_string();
        append_number(out_, thousandths, decimals);
    }
    void close() {
        if (open_) {
            end_string();
            out_ += "]TJ\n";
            open_ = false;
        }
    }

private:
    void end_string() {
        if (in_string_) {
            out_ += '>';
            in_string_ = false;
        }
    }
    std::string& out_;
    bool open_ = false;
    bool in_string_ = false;
};

} // namespace

void show(std::string& out, const layout::Text& text, PdfFonts& fonts) {
    const double size = text.size.in_points();
    // A place may be off by half of the last digit told: below 0.005 pt at any size.
    const int decimals = size <= 10.0 ? 0 : size <= 100.0 ? 1 : 2;
    const double unit = std::pow(10.0, -decimals);
    ShowArray array{out};
    double wanted = 0.0; // where the next glyph's origin belongs, thousandths of an em
    double pen = 0.0;    // where it would come to stand
    double rise = 0.0;
    for (const auto& glyph : text.run.glyphs) {
        if (glyph.y_offset != rise) {
            array.close();
            rise = glyph.y_offset;
            append_number(out, rise * size, 3);
            out += " Ts\n";
        }
        const double off = std::round((pen - wanted - glyph.x_offset * 1000.0) / unit) * unit;
        if (off != 0.0) {
            array.adjust(off, decimals);
            pen -= off;
        }
        const auto spelled = std::string_view{text.run.text}.substr(
            glyph.text_begin, glyph.text_end - glyph.text_begin);
        array.code(fonts.code_of(text.run.face, glyph.id, spelled));
        pen += fonts.width_of(text.run.face, glyph.id);
        wanted += glyph.advance * 1000.0;
    }
    array.close();
    if (rise != 0.0) {
        out += "0 Ts\n";
    }
}

} // namespace thawslip::render

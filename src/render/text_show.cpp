#include "render/text_show.h"

#include "render/number.h"

#include <cmath>
#include <string_view>

namespace thawslip::render {
namespace {

constexpr double tolerance = 0.008; // points

/// Digits after the point so that a correction, in thousandths of `size`, is right to 0.006 pt.
int correction_decimals(double size) {
    if (size <= 12.0) {
        return 0;
    }
    return size <= 120.0 ? 1 : 2;
}

/// One TJ array (strings of codes with corrections between them) at a time.
class Shower {
public:
    Shower(std::string& page, double size)
        : page_{page}, decimals_{correction_decimals(size)}, unit_{std::pow(10.0, -decimals_) *
                                                                   size / 1000.0} {}

    /// Moves the pen back by about `distance` points. \returns by how much it did
    double move_back(double distance) {
        const double units = std::round(distance / unit_);
        if (units == 0.0) {
            return 0.0;
        }
        close_string();
        append_number(array_, units * std::pow(10.0, -decimals_), decimals_);
        has_corrections_ = true;
        return units * unit_;
    }

    void code(std::uint16_t code) {
        if (!in_string_) {
            array_ += '(';
            in_string_ = true;
        }
        byte(static_cast<char>(code >> 8));
        byte(static_cast<char>(code & 0xff));
    }

    /// Shows what has gathered.
    void flush() {
        close_string();
        if (array_.empty()) {
            return;
        }
        if (has_corrections_) {
            page_.append(1, '[').append(array_).append("]TJ\n");
        } else {
            page_.append(array_).append("Tj\n");
        }
        array_.clear();
        has_corrections_ = false;
    }

private:
    void close_string() {
        if (in_string_) {
            array_ += ')';
            in_string_ = false;
        }
    }

    /// A string may hold any byte but these as it is (ISO 32000-1, 7.3.4.2 "Literal Strings"); a
    /// bare carriage return would be read as a line feed.
    void byte(char value) {
        if (value == '(' || value == ')' || value == '\\') {
            array_ += '\\';
        } else if (value == '\r') {
            array_ += "\\r";
            return;
        }
        array_ += value;
    }

    std::string& page_;
    int decimals_;
    double unit_; ///< the smallest correction, in points
    std::string array_;
    bool in_string_ = false;
    bool has_corrections_ = false;
};

std::string_view text_of(const typeset::GlyphRun& run, const typeset::Glyph& glyph) {
    return std::string_view{run.text}.substr(glyph.text_begin, glyph.text_end - glyph.text_begin);
}

void set_rise(std::string& page, double rise) {
    append_number(page, rise, 3);
    page += " Ts\n";
}

} // namespace

void show_text(std::string& page, const layout::Text& text, Pen pen, PdfFonts& fonts) {
    const double size = text.size.in_points();
    Shower shower{page, pen.size};
    double at = pen.start;                       // where a reader draws the next glyph
    double origin = text.baseline.x.in_points(); // where the run says that its origin is
    double rise = 0.0;
    for (const auto& glyph : text.run.glyphs) {
        if (glyph.y_offset != rise) {
            shower.flush();
            rise = glyph.y_offset;
            set_rise(page, rise * size);
        }
        const double off = at - (origin + glyph.x_offset * size);
        if (std::abs(off) > tolerance) {
            at -= shower.move_back(off);
        }
        const auto coded = fonts.code(text.run.face, glyph.id, text_of(text.run, glyph));
        shower.code(coded.code);
        at += coded.width * pen.size / 1000.0;
        origin += glyph.advance * size;
    }
    shower.flush();
    if (rise != 0.0) {
        set_rise(page, 0.0);
    }
}

} // namespace thawslip::render

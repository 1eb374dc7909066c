#include "render/svg.h"

#include "render/drawn_radius.h"
#include "render/module_runs.h"
#include "render/number.h"

#include <fmt/format.h>
#include <initializer_list>
#include <set>
#include <utility>

namespace thawslip::render {
namespace {

constexpr int scale_decimals = 9; // of font units, of which a line of text has some 100 000

/// XML 1.0 has no way to write most control characters; they become U+FFFD.
std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&': out += "&amp;"; break;
        case '<': out += "&lt;"; break;
        case '>': out += "&gt;"; break;
        case '"': out += "&quot;"; break;
        default:
            if (static_cast<unsigned char>(c) < 0x20 && c != '\n' && c != '\t') {
                out += "\xef\xbf\xbd";
            } else {
                out += c;
            }
        }
    }
    return out;
}

std::string number(double value, int decimals) {
    std::string out;
    append_number(out, value, decimals);
    return out;
}

std::string points(Length length) {
    return number(length.in_points(), length_decimals);
}

std::string matrix(std::initializer_list<double> values, int decimals = matrix_decimals) {
    std::string out = "matrix(";
    for (const double value : values) {
        append_number(out, value, decimals);
        out += ' ';
    }
    out.back() = ')';
    return out;
}

/// A glyph's outline in font units, y up, as the text's matrix expects it.
std::string path_data(const std::vector<typeset::OutlinePiece>& outline, double units_per_em) {
    using Kind = typeset::OutlinePiece::Kind;
    std::string out;
    const auto put = [&](char command, const typeset::OutlinePiece& piece, int points) {
        out += command;
        for (int i = 0; i < points; ++i) {
            for (const double value : {piece.x[i], piece.y[i]}) {
                append_number(out, value * units_per_em, 1);
                out += ' ';
            }
        }
        out.back() = '\n';
    };
    for (const auto& piece : outline) {
        switch (piece.kind) {
        case Kind::MoveTo: put('M', piece, 1); break;
        case Kind::LineTo: put('L', piece, 1); break;
        case Kind::QuadraticTo: put('Q', piece, 2); break;
        case Kind::Close: out += "Z\n"; break;
        }
    }
    return out;
}

std::string glyph_name(typeset::FaceId face, std::uint32_t glyph) {
    return fmt::format("f{}g{}", face, glyph);
}

class Picture {
public:
    Picture(const layout::Frame& frame, const typeset::FontSet& fonts, std::string_view title)
        : frame_{frame}, fonts_{fonts}, title_{title} {}

    std::string make();
    void draw(const layout::Text& text);
    void draw(const layout::Rule& rule);
    void draw(const layout::Outline& outline);
    void draw(const layout::ModuleGrid& grid);

private:
    std::string head() const;
    std::string definitions() const;
    std::string group() const;

    const layout::Frame& frame_;
    const typeset::FontSet& fonts_;
    std::string_view title_;
    std::string body_;
    std::string words_;
    std::set<std::pair<typeset::FaceId, std::uint32_t>> glyphs_; ///< used
};

void Picture::draw(const layout::Text& text) {
    const auto& face = fonts_.faces.at(text.run.face);
    const double units = face.units_per_em();
    const double scale = text.size.in_points() / units;
    words_ += text.run.text + '\n';
    body_ += "<g transform=\"" +
             matrix({scale, 0, 0, -scale, text.baseline.x.in_points(), text.baseline.y.in_points()},
                    scale_decimals) +
             (text.tone == layout::Tone::White ? "\" fill=\"#fff\">" : "\">");
    double origin = 0.0;
    for (const auto& glyph : text.run.glyphs) {
        const auto name = glyph_name(text.run.face, glyph.id);
        glyphs_.emplace(text.run.face, glyph.id);
        body_ += "<use xlink:href=\"#" + name + "\" x=\"" +
                 number((origin + glyph.x_offset) * units, 1) + '"';
        if (glyph.y_offset != 0.0) {
            body_ += " y=\"" + number(glyph.y_offset * units, 1) + '"';
        }
        body_ += "/>";
        origin += glyph.advance;
    }
    body_ += "</g>\n";
}

void Picture::draw(const layout::Rule& rule) {
    body_ += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\"/>\n",
                         points(rule.area.left()), points(rule.area.top()),
                         points(rule.area.size.width), points(rule.area.size.height));
}

void Picture::draw(const layout::Outline& outline) {
    const auto radius = drawn_radius(outline);
    body_ += fmt::format("<rect x=\"{}\" y=\"{}\" width=\"{}\" height=\"{}\" rx=\"{}\" "
                         "fill=\"none\" stroke=\"#000\" stroke-width=\"{}\"/>\n",
                         points(outline.area.left()), points(outline.area.top()),
                         points(outline.area.size.width), points(outline.area.size.height),
                         points(radius), points(outline.thickness));
}

/// One path for all modules, as in the PDF: no seams between neighbours.
void Picture::draw(const layout::ModuleGrid& grid) {
    const double module = grid.module.in_points();
    body_ +=
        "<path transform=\"" +
        matrix({module, 0, 0, module, grid.top_left.x.in_points(), grid.top_left.y.in_points()}) +
        "\" d=\"";
    for (const auto& run : module_runs(grid)) {
        body_ += fmt::format("M{} {}h{}v1h-{}z", run.x, run.y, run.length, run.length);
    }
    body_ += "\"/>\n";
}

std::string Picture::head() const {
    const auto& sheet = frame_.sheet;
    return fmt::format("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n"
                       "<svg xmlns=\"http://www.w3.org/2000/svg\" "
                       "xmlns:xlink=\"http://www.w3.org/1999/xlink\" version=\"1.1\" "
                       "width=\"{}mm\" height=\"{}mm\" viewBox=\"0 0 {} {}\" "
                       "role=\"img\">\n<title>{}</title>\n<desc>{}</desc>\n"
                       "<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n",
                       number(sheet.width.in_millimetres(), 4),
                       number(sheet.height.in_millimetres(), 4), number(sheet.width.in_points(), 4),
                       number(sheet.height.in_points(), 4), escaped(title_), escaped(words_));
}

std::string Picture::definitions() const {
    std::string out = "<defs>\n";
    for (const auto& [face_id, glyph] : glyphs_) {
        const auto& face = fonts_.faces[face_id];
        out += "<path id=\"" + glyph_name(face_id, glyph) + "\" d=\"" +
               path_data(face.outline(glyph), face.units_per_em()) + "\"/>\n";
    }
    return out + "</defs>\n";
}

std::string Picture::group() const {
    const auto& c = frame_.correction;
    if (c == layout::Correction{}) {
        return "<g>\n";
    }
    return "<g transform=\"" +
           matrix({c.scale_x, c.skew_y, c.skew, c.scale_y, c.offset.x.in_points(),
                   c.offset.y.in_points()}) +
           "\">\n";
}

std::string Picture::make() {
    for (const auto& item : frame_.items) {
        std::visit([this](const auto& drawn) { draw(drawn); }, item);
    }
    return head() + definitions() + group() + body_ + "</g>\n</svg>\n";
}

} // namespace

std::string svg(const layout::Frame& frame, const typeset::FontSet& fonts, std::string_view title) {
    return Picture{frame, fonts, title}.make();
}

} // namespace thawslip::render

#include "render/svg.h"

#include "render/module_runs.h"
#include "render/number.h"

#include <map>
#include <utility>

namespace thawslip::render {
namespace {

using typeset::OutlinePiece;
using GlyphKey = std::pair<typeset::FaceId, std::uint32_t>;

std::string escaped(std::string_view text) {
    std::string out;
    for (const char c : text) {
        switch (c) {
        case '&': out += "&amp;"; break;
        case '<': out += "&lt;"; break;
        case '>': out += "&gt;"; break;
        case '"': out += "&quot;"; break;
        default: out += c;
        }
    }
    return out;
}

/// Writes a frame's items; glyphs that occur are gathered for the definitions.
class Drawing {
public:
    void correct(const layout::Correction& c) {
        if (c == layout::Correction{}) {
            body_ += "<g>\n";
            return;
        }
        body_ += "<g transform=\"matrix(";
        numbers({c.scale_x, c.skew_y, c.skew, c.scale_y, c.offset.x.in_points(),
                 c.offset.y.in_points()},
                6);
        body_ += ")\">\n";
    }

    void operator()(const layout::Text& text) {
        const double size = text.size.in_points();
        double x = text.baseline.x.in_points();
        const double y = text.baseline.y.in_points();
        for (const auto& glyph : text.run.glyphs) {
            const auto [known, is_new] =
                glyphs_.emplace(GlyphKey{text.run.face, glyph.id}, glyphs_.size());
            body_ += "<use href=\"#g" + std::to_string(known->second) + "\" transform=\"matrix(";
            numbers({size, 0.0, 0.0, -size, x + glyph.x_offset * size, y - glyph.y_offset * size},
                    4);
            body_ += ")\"/>\n";
            x += glyph.advance * size;
        }
    }

    void operator()(const layout::Rule& rule) {
        body_ += "<rect";
        rectangle(rule.area);
        body_ += "/>\n";
    }

    void operator()(const layout::Outline& outline) {
        body_ += "<rect fill=\"none\" stroke=\"#000\"";
        attribute("stroke-width", outline.thickness.in_points());
        attribute("rx", outline.corner_radius.in_points());
        rectangle(outline.area);
        body_ += "/>\n";
    }

    void operator()(const layout::ModuleGrid& grid) {
        const double module = grid.module.in_points();
        body_ += "<path transform=\"matrix(";
        numbers(
            {module, 0.0, 0.0, module, grid.top_left.x.in_points(), grid.top_left.y.in_points()},
            6);
        body_ += ")\" d=\"";
        for (const auto& run : module_runs(grid)) {
            body_ += "M" + std::to_string(run.x) + " " + std::to_string(run.y) + "h" +
                     std::to_string(run.length) + "v1h-" + std::to_string(run.length) + "z";
        }
        body_ += "\"/>\n";
    }

    std::string definitions(const typeset::FontSet& fonts) const {
        std::string out = "<defs>\n";
        for (const auto& [key, number] : glyphs_) {
            out += "<path id=\"g" + std::to_string(number) + "\" d=\"";
            for (const auto& piece : fonts.faces[key.first].outline(key.second)) {
                append_piece(out, piece);
            }
            out += "\"/>\n";
        }
        return out + "</defs>\n";
    }

    const std::string& body() const { return body_; }

private:
    static void append_piece(std::string& out, const OutlinePiece& piece) {
        constexpr const char* letters = "MLQCZ";
        constexpr int points[] = {1, 1, 2, 3, 0};
        const auto kind = static_cast<std::size_t>(piece.kind);
        out += letters[kind];
        for (int i = 0; i < points[kind]; ++i) {
            append_number(out, piece.x[i], 5);
            out += ' ';
            append_number(out, piece.y[i], 5);
            out += ' ';
        }
    }

    void attribute(const char* name, double value) {
        body_ += ' ';
        body_ += name;
        body_ += "=\"";
        append_number(body_, value, 4);
        body_ += '"';
    }

    void rectangle(const Rect& area) {
        attribute("x", area.left().in_points());
        attribute("y", area.top().in_points());
        attribute("width", area.size.width.in_points());
        attribute("height", area.size.height.in_points());
    }

    void numbers(std::initializer_list<double> values, int decimals) {
        const char* space = "";
        for (const double value : values) {
            body_ += space;
            append_number(body_, value, decimals);
            space = " ";
        }
    }

    std::map<GlyphKey, std::size_t> glyphs_;
    std::string body_;
};

std::string words_of(const layout::Frame& frame) {
    std::string words;
    for (const auto& item : frame.items) {
        if (const auto* text = std::get_if<layout::Text>(&item)) {
            words += (words.empty() ? "" : " ") + text->run.text;
        }
    }
    return words;
}

} // namespace

std::string svg(const layout::Frame& frame, const typeset::FontSet& fonts, std::string_view title) {
    Drawing drawing;
    drawing.correct(frame.correction);
    for (const auto& item : frame.items) {
        std::visit(drawing, item);
    }
    std::string size;
    append_number(size, frame.sheet.width.in_points(), 4);
    size += "pt\" height=\"";
    append_number(size, frame.sheet.height.in_points(), 4);
    std::string box = "0 0 ";
    append_number(box, frame.sheet.width.in_points(), 4);
    box += ' ';
    append_number(box, frame.sheet.height.in_points(), 4);
    return "<svg xmlns=\"http://www.w3.org/2000/svg\" width=\"" + size + "pt\" viewBox=\"" + box +
           "\">\n<title>" + escaped(title) + "</title>\n<desc>" + escaped(words_of(frame)) +
           "</desc>\n<rect width=\"100%\" height=\"100%\" fill=\"#fff\"/>\n" +
           drawing.definitions(fonts) + drawing.body() + "</g>\n</svg>\n";
}

} // namespace thawslip::render

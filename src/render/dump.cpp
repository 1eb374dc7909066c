#include "render/dump.h"

#include "render/deflate.h"
#include "render/number.h"

#include <fmt/format.h>

namespace thawslip::render {
namespace {

std::string length_text(Length length) {
    return fixed(length.in_points(), 3);
}

std::string start(std::string_view kind, Point at) {
    return fmt::format("{:<9}{:>9}{:>9}", kind, length_text(at.x), length_text(at.y));
}

std::string measure(Size size) {
    return length_text(size.width) + " x " + length_text(size.height);
}

/// The words in double quotes; a quote, a backslash and what is not printed are escaped.
std::string in_quotes(std::string_view words) {
    std::string out = "\"";
    for (const char c : words) {
        if (c == '"' || c == '\\') {
            out += '\\';
            out += c;
        } else if (static_cast<unsigned char>(c) < 0x20 || c == 0x7f) {
            out += fmt::format("\\x{:02x}", static_cast<unsigned char>(c));
        } else {
            out += c;
        }
    }
    return out + '"';
}

std::uint32_t checksum(const std::vector<bool>& dark) {
    std::string spelled(dark.size(), '0');
    for (std::size_t i = 0; i < dark.size(); ++i) {
        spelled[i] = dark[i] ? '1' : '0';
    }
    return crc32(0, spelled);
}

struct Line {
    const typeset::FontSet& fonts;

    std::string operator()(const layout::Text& text) const {
        return fmt::format("{}{:>8} {} {}{}", start("text", text.baseline), length_text(text.size),
                           fonts.faces.at(text.run.face).postscript_name(),
                           in_quotes(text.run.text),
                           text.tone == layout::Tone::White ? " white" : "");
    }
    std::string operator()(const layout::Rule& rule) const {
        return start("rule", rule.area.origin) + ' ' + measure(rule.area.size);
    }
    std::string operator()(const layout::Outline& outline) const {
        return fmt::format("{} {} line {} radius {}", start("outline", outline.area.origin),
                           measure(outline.area.size), length_text(outline.thickness),
                           length_text(outline.corner_radius));
    }
    std::string operator()(const layout::ModuleGrid& grid) const {
        return fmt::format("{} {} x {} crc {:08x}", start("modules", grid.top_left), grid.side,
                           length_text(grid.module), checksum(grid.dark));
    }
};

std::string line_of(const layout::Correction& correction) {
    return fmt::format("corrected scale {} {} skew {} {} offset {} {}\n",
                       fixed(correction.scale_x, 6), fixed(correction.scale_y, 6),
                       fixed(correction.skew, 6), fixed(correction.skew_y, 6),
                       length_text(correction.offset.x), length_text(correction.offset.y));
}

} // namespace

std::string dump(const layout::Frame& frame, const typeset::FontSet& fonts) {
    auto out = fmt::format("{:<9}{:>9} x {}\n", "sheet", length_text(frame.sheet.width),
                           length_text(frame.sheet.height));
    if (frame.correction != layout::Correction{}) {
        out += line_of(frame.correction);
    }
    for (const auto& item : frame.items) {
        out += std::visit(Line{fonts}, item) + '\n';
    }
    return out;
}

} // namespace thawslip::render

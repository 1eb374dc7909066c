#pragma once

#include "typeset/itemize.h"
#include "typeset/shape.h"

#include <string>
#include <vector>

namespace thawslip::typeset {

/// A paragraph's text with its glyphs as they stand on one endless line, and what any part of
/// it looks like on a line of its own: words stand where HarfBuzz puts them when it is given
/// that line alone, yet only the letters around a break are ever shaped again.
///
/// Offsets are bytes of `text()`, widths em.
class ShapedText {
public:
    ShapedText() = default;
    ShapedText(std::string text, std::vector<Item> items, std::vector<Face> faces);

    const std::string& text() const { return text_; }

    /// One end of a line: from `safe` inwards the endless line's glyphs serve; what lies between
    /// the break and `safe` is shaped again and `width` wide.
    struct Edge {
        std::size_t safe = 0;
        double width = 0.0;
    };
    Edge left_edge(std::size_t begin) const;
    Edge right_edge(std::size_t end, Ending ending) const;

    /// Where the glyph of the character at `offset` stands on the endless line.
    /// \pre a cluster begins there, or the text ends
    double place_of(std::size_t offset) const;

    /// Width of [begin, end) on a line of its own.
    double width(std::size_t begin, std::size_t end, Ending ending) const;
    /// The same as glyphs.
    std::vector<ShapedGlyph> glyphs(std::size_t begin, std::size_t end, Ending ending) const;

private:
    std::vector<ShapedGlyph> shape_again(std::size_t begin, std::size_t end, Ending ending) const;
    std::size_t index_at(std::size_t offset) const;
    bool is_safe(std::size_t offset) const;
    std::size_t safe_after(std::size_t offset) const;  ///< the next safe place, or the text's end
    std::size_t safe_before(std::size_t offset) const; ///< the last safe place before, or 0

    std::string text_;
    std::vector<Item> items_;
    std::vector<Face> faces_;
    std::vector<ShapedGlyph> glyphs_;
    std::vector<double> places_; ///< of each glyph, and where the last ends
};

} // namespace thawslip::typeset

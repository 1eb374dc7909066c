#pragma once

#include "base/result.h"
#include "typeset/face.h"
#include "typeset/glyph_run.h"

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::typeset {

/// Words of one weight inside a paragraph.
struct StyledText {
    std::string text; ///< UTF-8; NFC or NFD
    Weight weight = Weight::Regular;
};

/// A character that cannot be set, and why: no face of the chain has it, or its script is not
/// set yet (right-to-left, or needing reordering).
struct UnsettableCharacter {
    enum class Reason { NoGlyph, Script, Control };
    char32_t character = 0;
    Reason reason = Reason::NoGlyph;
};

/// A paragraph shaped once, at no size: boxes, spaces and break opportunities in em. Setting it
/// at a size and width is then arithmetic, so a solver may try many.
class PreparedParagraph;

/// Shapes a paragraph: NFC, font fallback, kerning; break opportunities by UAX #14 with the
/// kitchen's rules (a number stays with its unit; "7–9 h" is one word).
Result<PreparedParagraph, UnsettableCharacter> prepare(const std::vector<StyledText>& spans,
                                                       const FontSet& fonts);

/// One set line: runs at their distance from the line's left edge, in em.
struct Line {
    struct Piece {
        double x = 0.0;
        GlyphRun run;
    };
    std::vector<Piece> pieces;
    double width = 0.0;       ///< without trailing space
    bool breaks_word = false; ///< a word had to be cut at this line's end
};

class PreparedParagraph {
public:
    double natural_width() const; ///< on one line, em
    double widest_word() const;   ///< what never breaks unless nothing else fits, em
    bool empty() const;

    /// Total-fit lines for a measure of `width` em, ragged right: the fewest lines that fit, and
    /// among those the evenest. More width never gives more lines. Words wider than the measure
    /// are cut at grapheme boundaries with a visible hyphen.
    /// \pre width > 0
    std::vector<Line> set(double width) const;

    /// How many lines `set(width)` would give, without building them.
    int count_lines(double width) const;

    struct Data;
    explicit PreparedParagraph(std::shared_ptr<const Data> data) : data_{std::move(data)} {}
    const Data& data() const { return *data_; }

private:
    std::shared_ptr<const Data> data_;
};

} // namespace thawslip::typeset

#pragma once

#include "base/result.h"
#include "typeset/face.h"
#include "typeset/glyph_run.h"

#include <memory>
#include <string>
#include <vector>

namespace thawslip::typeset {

/// Words of one weight inside a paragraph.
struct StyledText {
    std::string text; ///< UTF-8; NFC or NFD
    Weight weight = Weight::Regular;
};

/// A character that cannot be set, and why: no face of the chain has it; its script is not set
/// yet (right-to-left, or needing reordering); or it is a control character, a line's end or no
/// character at all (U+FFFD stands for bytes that are not UTF-8).
struct UnsettableCharacter {
    enum class Reason { NoGlyph, Script, Control };
    char32_t character = 0;
    Reason reason = Reason::NoGlyph;
};

/// A paragraph shaped once, at no size: boxes, spaces and break opportunities in em. Setting it
/// at a size and width is then arithmetic, so a solver may try many.
class PreparedParagraph;

/// Shapes a paragraph: NFC, font fallback, kerning; break opportunities by UAX #14 with the
/// kitchen's rules (a number stays with its unit; "7–9 h" is one word). Spaces at either end are
/// left out. Safe to call from several threads.
Result<PreparedParagraph, UnsettableCharacter> prepare(const std::vector<StyledText>& spans,
                                                       const FontSet& fonts);

/// One set line: runs at their distance from the line's left edge, in em.
struct Line {
    struct Piece {
        double x = 0.0;
        GlyphRun run;
    };
    std::vector<Piece> pieces;
    double width = 0.0; ///< without trailing space
    /// What should stay together had to be parted at this line's end: a word, or a number and
    /// its unit.
    bool breaks_word = false;
};

class PreparedParagraph {
public:
    double natural_width() const; ///< on one line, em
    double widest_word() const;   ///< what never breaks unless nothing else fits, em
    bool empty() const;           ///< nothing to draw: set() gives no lines

    /// Total-fit lines for a measure of `width` em, ragged right: the fewest lines that fit; among
    /// those, none whose last is a single short word if that can be; among those, the evenest.
    /// More width never gives more lines. What is wider than the measure begins a line and is cut
    /// where it was only held together or the cook put a soft hyphen, else at grapheme boundaries
    /// with a visible hyphen. Only a single letter (and its hyphen) that is wider than the measure
    /// stands out of it: Line::width says so.
    /// \pre width > 0
    std::vector<Line> set(double width) const;

    /// How many lines `set(width)` would give, without building them.
    int count_lines(double width) const;

    /// Shaped at once: the very same words, not only equal ones.
    friend bool operator==(const PreparedParagraph&, const PreparedParagraph&) = default;

    struct Data;
    explicit PreparedParagraph(std::shared_ptr<const Data> data) : data_{std::move(data)} {}
    const Data& data() const { return *data_; }

private:
    std::shared_ptr<const Data> data_;
};

} // namespace thawslip::typeset

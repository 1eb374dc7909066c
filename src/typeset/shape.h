#pragma once

#include "typeset/face.h"
#include "typeset/glyph_run.h"
#include "unicode/character.h"

#include <string_view>
#include <vector>

namespace thawslip::typeset {

/// What is drawn after the last letter of a shaped stretch.
enum class Ending { Plain, Hyphen };

/// A stretch of text that one face sets in one script.
struct Stretch {
    std::string_view text; ///< of the whole paragraph
    std::size_t begin = 0; ///< the stretch is text[begin, end)
    std::size_t end = 0;
    unicode::Script script = unicode::Script::Latin;
    Ending ending = Ending::Plain;
};

/// A glyph whose text offsets count from the start of the paragraph.
struct ShapedGlyph {
    Glyph glyph;
    FaceId face = 0;
    std::size_t cluster = 0; ///< where the text of its cluster begins
    /// Whether a line may begin here without shaping either side again.
    bool is_safe = true;
};

/// Glyphs for the stretch, kerning and ligatures included, appended to `glyphs`. Nothing outside
/// the stretch bears on them. A hyphen at the end stands for the byte after the stretch.
void shape(const Stretch& stretch, const Face& face, FaceId id, std::vector<ShapedGlyph>& glyphs);

/// Whether the face has a glyph for the character, or a way to do without: HarfBuzz draws the
/// rarer spaces as parts of the common one and a no-break hyphen as a hyphen.
bool can_draw(const Face& face, char32_t character);

} // namespace thawslip::typeset

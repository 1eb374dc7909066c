#pragma once

#include "base/result.h"
#include "typeset/paragraph_text.h"
#include "unicode/character.h"

#include <vector>

namespace thawslip::typeset {

/// Text that is shaped in one go: one face, one script. Bytes [begin, end) of the paragraph.
struct Item {
    std::size_t begin = 0;
    std::size_t end = 0;
    FaceId face = 0;
    unicode::Script script = unicode::Script::Latin;
    friend bool operator==(const Item&, const Item&) = default;
};

/// Cuts the paragraph into items that follow each other without gaps. A character as a reader
/// counts it, accents and all, is set from the first face of its weight's chain that has all of
/// it. Digits and punctuation take the script of the letters before them (UAX #24).
Result<std::vector<Item>, UnsettableCharacter> itemize(const ParagraphText& text,
                                                       const FontSet& fonts);

} // namespace thawslip::typeset

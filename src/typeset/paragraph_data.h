#pragma once

#include "typeset/paragraph.h"
#include "typeset/paragraph_text.h"
#include "typeset/shaped_text.h"
#include "typeset/text_range.h"
#include "typeset/total_fit.h"

#include <vector>

namespace thawslip::typeset {

struct PreparedParagraph::Data {
    ParagraphText written;
    ShapedText shaped;
    std::vector<TextRange> words; ///< between free opportunities, without the space that follows
    LineBoxes boxes;              ///< one a word
    double widest_word = 0.0;
};

} // namespace thawslip::typeset

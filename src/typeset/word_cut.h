#pragma once

#include "typeset/paragraph_text.h"
#include "typeset/shaped_text.h"
#include "typeset/text_range.h"

#include <vector>

namespace thawslip::typeset {

/// Bytes [begin, end) of a paragraph that stand on one line, and what is drawn after them.
struct CutLine {
    std::size_t begin = 0;
    std::size_t end = 0;
    Ending ending = Ending::Plain;
};

/// A word that is wider than the measure: the lines that it fills, and where what is left
/// begins, which other words may follow on the same line.
struct CutWord {
    std::vector<CutLine> lines;
    std::size_t tail = 0;
};

/// Which of the places in reach a word is cut at where none is willing.
enum class Cuts {
    Farthest,
    Kindest, ///< behind a vowel and with three letters on either side, in the line's second half
};

/// Cuts the word text[begin, end) for a measure of `measure` em. Each line takes as much as
/// fits: up to a place where words are only held together or that a soft hyphen marks, if one
/// is in reach; else up to a grapheme boundary, with a hyphen unless a dash is there already.
/// A line never has less than one grapheme, even where that is too wide.
/// \pre the word's first grapheme is not at its end
CutWord cut_word(const ShapedText& shaped, const ParagraphText& paragraph, TextRange word,
                 double measure, Cuts cuts);

} // namespace thawslip::typeset

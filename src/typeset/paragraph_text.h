#pragma once

#include "base/result.h"
#include "typeset/paragraph.h"

#include <cstddef>
#include <string>
#include <vector>

namespace thawslip::typeset {

/// How willingly a line ends at an opportunity.
enum class BreakKind {
    Free,       ///< wherever that makes good lines
    Unwilling,  ///< only where it would take a line more, or leave one far too short, not to
    Held,       ///< only where the words held together are wider than a line
    SoftHyphen, ///< likewise, and a hyphen shows
};

struct BreakOpportunity {
    std::size_t at = 0; ///< byte offset of what would open the next line
    BreakKind kind = BreakKind::Free;
    friend bool operator==(const BreakOpportunity&, const BreakOpportunity&) = default;
};

/// Text of one weight, up to byte offset `end`.
struct WeightRange {
    std::size_t end = 0;
    Weight weight = Weight::Regular;
};

/// A paragraph's words made ready for shaping. Offsets are bytes of `text`.
struct ParagraphText {
    std::string text;                     ///< NFC, no invisible characters, no space at either end
    std::vector<WeightRange> weights;     ///< rising; the last ends with the text
    std::vector<BreakOpportunity> breaks; ///< rising, inside the text
    std::vector<std::size_t> graphemes;   ///< ends of characters as a reader counts them, rising
};

/// Joins the spans, composes them, finds where lines may end (UAX #14, the kitchen's rules, soft
/// hyphens), and drops what is never drawn.
Result<ParagraphText, UnsettableCharacter> read_text(const std::vector<StyledText>& spans);

/// Byte offset where the ink of `text[begin, end)` ends: before the spaces at its end.
std::size_t ink_end(std::string_view text, std::size_t begin, std::size_t end);

} // namespace thawslip::typeset

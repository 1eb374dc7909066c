#include "typeset/paragraph_text.h"

#include "base/list.h"
#include "base/utf8.h"
#include "typeset/kitchen_breaks.h"
#include "unicode/boundaries.h"
#include "unicode/character.h"
#include "unicode/normalize.h"

#include <algorithm>
#include <optional>

namespace thawslip::typeset {
namespace {

constexpr char32_t soft_hyphen = U'\u00AD';

std::optional<UnsettableCharacter> fault_of(std::string_view text) {
    using Reason = UnsettableCharacter::Reason;
    if (first_invalid_utf8(text)) {
        return UnsettableCharacter{U'\uFFFD', Reason::Control};
    }
    for (std::size_t at = 0; at < text.size();) {
        const char32_t c = next_code_point(text, at);
        if (unicode::is_control(c)) {
            return UnsettableCharacter{c, Reason::Control};
        }
        if (unicode::turns_direction(c) || unicode::script_of(c) == unicode::Script::Other) {
            return UnsettableCharacter{c, Reason::Script};
        }
    }
    return std::nullopt;
}

/// How many bytes of `text` are marks that belong to a character before it.
std::size_t leading_marks(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t before = at;
        if (!unicode::is_mark(next_code_point(text, at))) {
            return before;
        }
    }
    return text.size();
}

/// The spans' text end to end, composed. An accent typed at the start of a span goes with the
/// letter before it, so that composing gives the same wherever the spans part.
ParagraphText join(const std::vector<StyledText>& spans) {
    ParagraphText joined;
    std::string pending;
    Weight weight = spans.empty() ? Weight::Regular : spans.front().weight;
    const auto close = [&joined, &pending, &weight] {
        joined.text += unicode::to_nfc(pending);
        joined.weights.push_back({joined.text.size(), weight});
    };
    for (const auto& span : spans) {
        const auto marks = pending.empty() ? 0 : leading_marks(span.text);
        pending += span.text.substr(0, marks);
        if (marks < span.text.size()) {
            close();
            pending = span.text.substr(marks);
            weight = span.weight;
        }
    }
    close();
    return joined;
}

bool lies_inside(std::size_t at, const std::vector<TextRange>& ranges) {
    const auto after = std::upper_bound(
        ranges.begin(), ranges.end(), at,
        [](std::size_t place, const TextRange& range) { return place < range.end; });
    return after != ranges.end() && after->begin < at;
}

/// Opportunities in `text`, which still has its invisible characters.
std::vector<BreakOpportunity> find_breaks(const std::string& text) {
    const auto kept = kept_together(text);
    const auto unwilling = better_together(text);
    const auto free = unicode::line_breaks(text);
    auto next_free = free.begin();
    std::vector<BreakOpportunity> found;
    char32_t previous = 0;
    for (std::size_t at = 0; at < text.size();) {
        while (next_free != free.end() && *next_free < at) {
            ++next_free;
        }
        const bool breaks = next_free != free.end() && *next_free == at;
        if (at != 0 && previous == soft_hyphen) {
            found.push_back({at, BreakKind::SoftHyphen});
        } else if (at != 0 && breaks) {
            found.push_back({at, lies_inside(at, kept)     ? BreakKind::Held
                                 : contains(unwilling, at) ? BreakKind::Unwilling
                                                           : BreakKind::Free});
        } else if (at != 0 && unicode::is_space(previous)) {
            found.push_back({at, BreakKind::Held});
        }
        previous = next_code_point(text, at);
    }
    return found;
}

/// Whether the character does nothing once the opportunities are found. Joiners and variation
/// selectors stay, since they choose glyphs.
bool is_spent(char32_t c) {
    const bool chooses_glyph = c == U'\u200C' || c == U'\u200D' || (c >= 0xFE00 && c <= 0xFE0F);
    return unicode::is_invisible(c) && !chooses_glyph;
}

/// `whole[begin, end)` without its spent characters, all offsets moved along.
ParagraphText without_spent(const ParagraphText& whole, TextRange kept) {
    ParagraphText result;
    auto weight = whole.weights.begin();
    auto opportunity = whole.breaks.begin();
    for (std::size_t at = kept.begin; at < kept.end;) {
        while (weight->end <= at) {
            result.weights.push_back({result.text.size(), weight->weight});
            ++weight;
        }
        for (; opportunity != whole.breaks.end() && opportunity->at <= at; ++opportunity) {
            result.breaks.push_back({result.text.size(), opportunity->kind});
        }
        const char32_t c = next_code_point(whole.text, at);
        if (!is_spent(c)) {
            append_utf8(result.text, c);
        }
    }
    if (!result.text.empty()) {
        result.weights.push_back({result.text.size(), weight->weight});
    }
    return result;
}

/// Where spent characters stood side by side, opportunities fall on one place: the freest counts.
/// None is left at the ends.
void tidy(std::vector<BreakOpportunity>& breaks, std::size_t text_size) {
    std::stable_sort(breaks.begin(), breaks.end(), [](const auto& a, const auto& b) {
        return a.at != b.at ? a.at < b.at : a.kind < b.kind;
    });
    const auto same_place = [](const auto& a, const auto& b) { return a.at == b.at; };
    breaks.erase(std::unique(breaks.begin(), breaks.end(), same_place), breaks.end());
    const auto outside = [text_size](const auto& b) { return b.at == 0 || b.at >= text_size; };
    breaks.erase(std::remove_if(breaks.begin(), breaks.end(), outside), breaks.end());
}

std::size_t ink_begin(std::string_view text) {
    for (std::size_t at = 0; at < text.size();) {
        const std::size_t before = at;
        const char32_t c = next_code_point(text, at);
        if (!unicode::is_space(c) && !is_spent(c)) {
            return before;
        }
    }
    return text.size();
}

} // namespace

std::size_t ink_end(std::string_view text, std::size_t begin, std::size_t end) {
    std::size_t ink = begin;
    for (std::size_t at = begin; at < end;) {
        const char32_t c = next_code_point(text, at);
        if (!unicode::is_space(c) && !is_spent(c)) {
            ink = at;
        }
    }
    return ink;
}

Result<ParagraphText, UnsettableCharacter> read_text(const std::vector<StyledText>& spans) {
    for (const auto& span : spans) {
        if (const auto fault = fault_of(span.text)) {
            return Failure{*fault};
        }
    }
    auto whole = join(spans);
    whole.breaks = find_breaks(whole.text);
    const auto begin = ink_begin(whole.text);
    auto result = without_spent(whole, {begin, ink_end(whole.text, begin, whole.text.size())});
    tidy(result.breaks, result.text.size());
    result.graphemes = unicode::grapheme_breaks(result.text);
    return result;
}

} // namespace thawslip::typeset

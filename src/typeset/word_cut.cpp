#include "typeset/word_cut.h"

#include "typeset/total_fit.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <optional>

namespace thawslip::typeset {
namespace {

/// A place where the word may be cut: the line before it ends at `line_end`, with `ending`.
struct Cut {
    std::size_t at = 0;
    std::size_t line_end = 0;
    Ending ending = Ending::Plain;
};

bool ends_with_dash(std::string_view text) {
    constexpr std::string_view dashes[] = {"-", "\u2010", "\u2011", "\u2013", "\u2014", "/"};
    return std::any_of(std::begin(dashes), std::end(dashes), [text](std::string_view dash) {
        return text.size() >= dash.size() && text.substr(text.size() - dash.size()) == dash;
    });
}

/// The last of `cuts`, which rise, after which the line from `begin` still fits.
std::optional<Cut> farthest(const ShapedText& shaped, const std::vector<Cut>& cuts,
                            std::size_t begin, double measure) {
    const auto end = std::partition_point(cuts.begin(), cuts.end(), [&](const Cut& cut) {
        return cut.at <= begin || fits(shaped.width(begin, cut.line_end, cut.ending), measure);
    });
    if (end == cuts.begin() || std::prev(end)->at <= begin) {
        return std::nullopt;
    }
    return *std::prev(end);
}

/// Where the words inside are only held together. Of places with nothing but spaces between
/// them the last is one.
std::vector<Cut> willing_cuts(const ParagraphText& paragraph, TextRange word) {
    std::vector<Cut> cuts;
    for (const auto& opportunity : paragraph.breaks) {
        const auto at = opportunity.at;
        if (at <= word.begin || at >= word.end) {
            continue;
        }
        const auto line_end = ink_end(paragraph.text, word.begin, at);
        const bool soft = opportunity.kind == BreakKind::SoftHyphen;
        if (!cuts.empty() && cuts.back().line_end == line_end) {
            cuts.pop_back();
        }
        if (line_end > word.begin) {
            cuts.push_back({at, line_end, soft ? Ending::Hyphen : Ending::Plain});
        }
    }
    // The end of the word is within reach of a line that takes all the rest.
    cuts.push_back({word.end, word.end, Ending::Plain});
    return cuts;
}

std::vector<Cut> forced_cuts(const ParagraphText& paragraph, TextRange word) {
    std::vector<Cut> cuts;
    for (const auto at : paragraph.graphemes) {
        if (at > word.begin && at < word.end) {
            const auto before = std::string_view{paragraph.text}.substr(0, at);
            cuts.push_back({at, at, ends_with_dash(before) ? Ending::Plain : Ending::Hyphen});
        }
    }
    return cuts;
}

/// Whether a character is a vowel, with an accent or without. What is written in no such letters
/// has none.
bool is_vowel(std::string_view character) {
    constexpr std::string_view vowels = "aeiou";
    const auto folded = unicode::fold_for_search(character);
    return !folded.empty() && vowels.find(folded.front()) != std::string_view::npos;
}

/// Where inside a word one may be cut by force, each with the characters beside it.
class ForcedCuts {
public:
    ForcedCuts(const ParagraphText& paragraph, TextRange word)
        : text_{paragraph.text}, word_{word}, cuts_{forced_cuts(paragraph, word)} {}

    const std::vector<Cut>& all() const { return cuts_; }

    /// The cut that a reader stumbles over least, of those that leave half of what fits on the line
    /// at least: between a vowel and what is none, with some letters on both sides; else any with
    /// as many; else the farthest, which is handed in.
    Cut kindest(std::size_t begin, Cut farthest) const {
        constexpr std::ptrdiff_t least_letters = 3;
        const auto first = std::ranges::upper_bound(cuts_, begin, {}, &Cut::at);
        const auto last = std::ranges::lower_bound(cuts_, farthest.at, {}, &Cut::at);
        const auto half = first + (last - first) / 2;
        std::optional<Cut> roomy;
        for (auto after = last + 1; after != half; --after) {
            const auto cut = after - 1;
            if (cut - first + 1 < least_letters || cuts_.end() - cut < least_letters) {
                continue;
            }
            if (ends_syllable(cut)) {
                return *cut;
            }
            roomy = roomy ? roomy : std::optional{*cut};
        }
        return roomy.value_or(farthest);
    }

private:
    using At = std::vector<Cut>::const_iterator;

    bool ends_syllable(At cut) const {
        const auto before = cut == cuts_.begin() ? word_.begin : std::prev(cut)->at;
        const auto after = std::next(cut) == cuts_.end() ? word_.end : std::next(cut)->at;
        const auto part = [this](std::size_t begin, std::size_t end) {
            return std::string_view{text_}.substr(begin, end - begin);
        };
        return is_vowel(part(before, cut->at)) && !is_vowel(part(cut->at, after));
    }

    const std::string& text_;
    TextRange word_;
    std::vector<Cut> cuts_;
};

} // namespace

CutWord cut_word(const ShapedText& shaped, const ParagraphText& paragraph, TextRange word,
                 double measure, Cuts cuts) {
    const auto willing = willing_cuts(paragraph, word);
    const ForcedCuts places{paragraph, word};
    const auto& forced = places.all();
    CutWord result{{}, word.begin};
    while (true) {
        auto cut = farthest(shaped, willing, result.tail, measure);
        if (!cut) {
            cut = farthest(shaped, forced, result.tail, measure);
            const bool may_choose = cuts == Cuts::Kindest && cut && cut->ending == Ending::Hyphen;
            cut = may_choose ? places.kindest(result.tail, *cut) : cut;
        }
        if (!cut) {
            // Not even one grapheme fits: set it all the same.
            const auto first = std::find_if(forced.begin(), forced.end(),
                                            [&](const Cut& c) { return c.at > result.tail; });
            cut = first == forced.end() ? willing.back() : *first;
        }
        if (cut->at == word.end) {
            return result;
        }
        result.lines.push_back({result.tail, cut->line_end, cut->ending});
        result.tail = cut->at;
    }
}

} // namespace thawslip::typeset

#include "typeset/word_cut.h"

#include "typeset/total_fit.h"

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

} // namespace

CutWord cut_word(const ShapedText& shaped, const ParagraphText& paragraph, TextRange word,
                 double measure) {
    const auto willing = willing_cuts(paragraph, word);
    const auto forced = forced_cuts(paragraph, word);
    CutWord result{{}, word.begin};
    while (true) {
        auto cut = farthest(shaped, willing, result.tail, measure);
        if (!cut) {
            cut = farthest(shaped, forced, result.tail, measure);
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

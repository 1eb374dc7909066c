#include "typeset/itemize.h"
#include "typeset/paragraph.h"
#include "typeset/paragraph_data.h"

#include <algorithm>

namespace thawslip::typeset {
namespace {

/// For ending a line inside a word with a hyphen of its own ("slow-|cooker"): as bad as a line
/// that falls a fifth of the measure short. Our choice.
constexpr double penalty_inside_word = 50.0;

/// For ending a line inside an amount: as bad as a line that falls two fifths of the measure short.
/// Our choice.
constexpr double penalty_inside_amount = 400.0;

bool is_free(const BreakOpportunity& opportunity) {
    return opportunity.kind == BreakKind::Free || opportunity.kind == BreakKind::Unwilling;
}

std::vector<TextRange> words_of(const ParagraphText& written) {
    std::vector<TextRange> words;
    std::size_t begin = 0;
    const auto close = [&](std::size_t at) {
        const auto end = ink_end(written.text, begin, at);
        if (end > begin) { // else more of the space after the word before
            words.push_back({begin, end});
        }
        begin = at;
    };
    for (const auto& opportunity : written.breaks) {
        if (is_free(opportunity)) {
            close(opportunity.at);
        }
    }
    if (!written.text.empty()) {
        close(written.text.size());
    }
    return words;
}

/// The boxes of a line breaker: where a line that begins or ends with each word begins or ends
/// on the endless line. A line so short that the letters to be shaped again at its ends meet is
/// measured by itself.
LineBoxes boxes_of(const ShapedText& shaped, const std::vector<TextRange>& words) {
    LineBoxes result;
    std::vector<std::size_t> right_safe;
    std::vector<std::size_t> left_safe;
    for (std::size_t i = 0; i < words.size(); ++i) {
        const auto left = shaped.left_edge(words[i].begin);
        const auto right = shaped.right_edge(words[i].end, Ending::Plain);
        const bool parted = i + 1 < words.size() && words[i].end == words[i + 1].begin;
        result.boxes.push_back({shaped.place_of(left.safe) - left.width,
                                shaped.place_of(right.safe) + right.width,
                                parted ? penalty_inside_word : 0.0});
        left_safe.push_back(left.safe);
        right_safe.push_back(right.safe);
    }
    for (std::size_t first = 0; first < words.size(); ++first) {
        for (auto last = first; last < words.size() && right_safe[last] < left_safe[first];
             ++last) {
            const auto width = shaped.width(words[first].begin, words[last].end, Ending::Plain);
            result.exact.push_back({first, last, width});
        }
    }
    return result;
}

void add_unwilling(LineBoxes& boxes, const std::vector<TextRange>& words,
                   const std::vector<BreakOpportunity>& breaks) {
    for (const auto& opportunity : breaks) {
        const auto next = std::ranges::find(words, opportunity.at, &TextRange::begin);
        if (opportunity.kind == BreakKind::Unwilling && next != words.begin() &&
            next != words.end()) {
            boxes.boxes[static_cast<std::size_t>(next - words.begin()) - 1].penalty +=
                penalty_inside_amount;
        }
    }
}

} // namespace

Result<PreparedParagraph, UnsettableCharacter> prepare(const std::vector<StyledText>& spans,
                                                       const FontSet& fonts) {
    auto written = read_text(spans);
    if (!written) {
        return Failure{written.fault()};
    }
    auto items = itemize(written.value(), fonts);
    if (!items) {
        return Failure{items.fault()};
    }
    auto data = std::make_shared<PreparedParagraph::Data>();
    data->written = std::move(written).value();
    data->shaped = ShapedText{data->written.text, std::move(items).value(), fonts.faces};
    data->words = words_of(data->written);
    data->boxes = boxes_of(data->shaped, data->words);
    add_unwilling(data->boxes, data->words, data->written.breaks);
    for (std::size_t i = 0; i < data->words.size(); ++i) {
        data->widest_word = std::max(data->widest_word, data->boxes.width(i, i));
    }
    return PreparedParagraph{std::move(data)};
}

} // namespace thawslip::typeset

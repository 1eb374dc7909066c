#include "wording/bilingual.h"

#include "wording/print_fields.h"

#include <cassert>

namespace thawslip::wording {
namespace {

/// What the second language adds to a paragraph. One box or number is enough for both.
Paragraph echo_of(Paragraph second) {
    second.voice = Voice::Second;
    second.marker = Marker::None;
    return second;
}

std::vector<Paragraph> both_of(std::vector<Paragraph> first, const std::vector<Paragraph>& second) {
    assert(first.size() == second.size());
    std::vector<Paragraph> both;
    for (std::size_t i = 0; i < first.size(); ++i) {
        auto& paragraph = first[i];
        auto other = i < second.size() ? second[i] : paragraph;
        const bool alike = paragraph == other;
        auto echo = alike ? Paragraph{} : echo_of(std::move(other));
        both.push_back(std::move(paragraph));
        if (!alike) {
            both.push_back(std::move(echo));
        }
    }
    return both;
}

/// In full and in each shorter form.
void append(Field& field, const Field& second) {
    field.paragraphs = both_of(std::move(field.paragraphs), second.paragraphs);
    for (std::size_t form = 1; form <= field.shorter.size(); ++form) {
        auto& shorter = field.shorter[form - 1];
        shorter = both_of(std::move(shorter), second.said(form));
    }
}

/// Whose kitchen and which bags it is reads the same in any language, and a note is the cook's.
bool names_only(std::string_view field) {
    return field == field_name::kitchen || field == field_name::bags || field == field_name::note;
}

} // namespace

Print bilingual(Print first, const Print& second) {
    for (auto& field : first.fields) {
        const auto* other = second.field(field.name);
        if (other != nullptr && !names_only(field.name)) {
            append(field, *other);
        }
    }
    if (first.page_phrase != second.page_phrase) {
        first.second_page_phrase = second.page_phrase;
        first.second_more_phrase = second.more_phrase;
    }
    return first;
}

} // namespace thawslip::wording

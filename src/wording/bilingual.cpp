#include "wording/bilingual.h"

#include "wording/print_fields.h"

#include <cassert>

namespace thawslip::wording {
namespace {

/// What the second language adds below a paragraph: all of it, or its label.
Paragraph echo_of(const Paragraph& first, Paragraph second) {
    second.voice = Voice::Second;
    second.marker = Marker::None;
    if (first.spans == second.spans && !second.label.empty()) {
        second.spans.clear();
    }
    return second;
}

void append(Field& field, const Field& second) {
    assert(field.paragraphs.size() == second.paragraphs.size());
    std::vector<Paragraph> both;
    for (std::size_t i = 0; i < field.paragraphs.size(); ++i) {
        auto& paragraph = field.paragraphs[i];
        const bool alike = i >= second.paragraphs.size() || paragraph == second.paragraphs[i];
        auto echo = alike ? Paragraph{} : echo_of(paragraph, second.paragraphs[i]);
        both.push_back(std::move(paragraph));
        if (!alike) {
            both.push_back(std::move(echo));
        }
    }
    field.paragraphs = std::move(both);
}

/// Whose kitchen and which bags it is reads the same in any language.
bool names_only(std::string_view field) {
    return field == field_name::kitchen || field == field_name::bags;
}

std::string both_phrases(const std::string& first, const std::string& second) {
    return first.empty() || first == second ? first : first + " · " + second;
}

} // namespace

Print bilingual(Print first, const Print& second) {
    for (auto& field : first.fields) {
        const auto* other = second.field(field.name);
        if (other != nullptr && !names_only(field.name)) {
            append(field, *other);
        }
    }
    first.page_phrase = both_phrases(first.page_phrase, second.page_phrase);
    first.continued_phrase = both_phrases(first.continued_phrase, second.continued_phrase);
    return first;
}

} // namespace thawslip::wording

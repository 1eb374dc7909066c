#include "typeset/itemize.h"

#include "base/utf8.h"
#include "typeset/shape.h"

#include <algorithm>
#include <optional>
#include <string_view>

namespace thawslip::typeset {
namespace {

/// The first character of `grapheme` that `face` cannot draw.
std::optional<char32_t> first_undrawable(const Face& face, std::string_view grapheme) {
    for (std::size_t at = 0; at < grapheme.size();) {
        const char32_t c = next_code_point(grapheme, at);
        if (!unicode::is_invisible(c) && !can_draw(face, c)) {
            return c;
        }
    }
    return std::nullopt;
}

Result<FaceId, UnsettableCharacter> face_for(std::string_view grapheme, Weight weight,
                                             const FontSet& fonts) {
    char32_t lacking = U'\uFFFD';
    for (const FaceId id : fonts.chain(weight)) {
        const auto missing = first_undrawable(fonts.faces[id], grapheme);
        if (!missing) {
            return id;
        }
        // The last face has the most, so what it lacks is what to name.
        lacking = *missing;
    }
    return Failure{UnsettableCharacter{lacking, UnsettableCharacter::Reason::NoGlyph}};
}

unicode::Script script_of_grapheme(std::string_view grapheme) {
    std::size_t at = 0;
    return unicode::script_of(next_code_point(grapheme, at));
}

/// Gives text that all scripts share the script before it; at the start, the one after it.
void resolve_common(std::vector<Item>& items) {
    using unicode::Script;
    const auto lettered = std::find_if(
        items.begin(), items.end(), [](const Item& item) { return item.script != Script::Common; });
    Script script = lettered == items.end() ? Script::Latin : lettered->script;
    for (auto& item : items) {
        script = item.script == Script::Common ? script : item.script;
        item.script = script;
    }
}

void merge_neighbours(std::vector<Item>& items) {
    std::vector<Item> merged;
    for (const auto& item : items) {
        if (!merged.empty() && merged.back().face == item.face &&
            merged.back().script == item.script) {
            merged.back().end = item.end;
        } else {
            merged.push_back(item);
        }
    }
    items = std::move(merged);
}

} // namespace

Result<std::vector<Item>, UnsettableCharacter> itemize(const ParagraphText& text,
                                                       const FontSet& fonts) {
    std::vector<Item> items;
    auto weight = text.weights.begin();
    std::size_t begin = 0;
    for (const auto end : text.graphemes) {
        const auto grapheme = std::string_view{text.text}.substr(begin, end - begin);
        while (weight->end <= begin) {
            ++weight;
        }
        const auto face = face_for(grapheme, weight->weight, fonts);
        if (!face) {
            return Failure{face.fault()};
        }
        items.push_back({begin, end, face.value(), script_of_grapheme(grapheme)});
        begin = end;
    }
    resolve_common(items);
    merge_neighbours(items);
    return items;
}

} // namespace thawslip::typeset

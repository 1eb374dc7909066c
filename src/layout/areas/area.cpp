#include "layout/areas/area.h"

#include "base/list.h"
#include "layout/areas/orders.h"
#include "layout/areas/word_choice.h"

namespace thawslip::layout {
namespace {

using Kind = decltype(Area::kind);

const std::array<Named<Kind>, 6> kinds = {{{{"text"}, TextArea{}},
                                           {{"code", {"qr"}}, CodeArea{}},
                                           {{"write", {"writing"}}, WriteArea{}},
                                           {{"chart", {"lanes", "timeline"}}, ChartArea{}},
                                           {{"pattern"}, PatternArea{}},
                                           {{"months", {"month strip"}}, MonthsArea{}}}};
static_assert(kinds.size() == std::variant_size_v<Kind>, "each kind has a word");

const std::array<Named<Stand>, 3> stands = {
    {{{"top"}, Stand::Top}, {{"middle", {"centre"}}, Stand::Middle}, {{"bottom"}, Stand::Bottom}}};

/// The words of an area that may be changed, or not.
template <class AnyArea>
auto words_in(AnyArea& area) -> decltype(std::get_if<TextArea>(&area.kind)) {
    if (auto* chart = std::get_if<ChartArea>(&area.kind)) {
        return &chart->text;
    }
    if (auto* write = std::get_if<WriteArea>(&area.kind)) {
        return write->heading.words.empty() ? nullptr : &write->heading;
    }
    return std::get_if<TextArea>(&area.kind);
}

} // namespace

const TextArea* text_of(const Area& area) {
    return words_in(area);
}

TextArea* text_of(Area& area) {
    return words_in(area);
}

std::vector<std::string> area_kinds() {
    return mapped(kinds, [](const auto& kind) { return kind.word.word; });
}

void read(toml::Table& table, const PrintFields& fields, Area& area) {
    area.kind = choice<Kind>(table, "kind", "a kind of area", kinds, TextArea{});
    area.stand = choice(table, "stand", "a place to stand", stands, Stand::Top);
    std::visit([&](auto& kind) { read(table, fields, kind); }, area.kind);
}

Result<Content, ContentFault> prepare(const Area& area, const wording::Print& print,
                                      Shaper& shaper) {
    return std::visit([&](const auto& kind) { return prepare(kind, print, shaper); }, area.kind);
}

int drop_of(const Area& area) {
    if (const auto* months = std::get_if<MonthsArea>(&area.kind)) {
        return months->drop;
    }
    const auto* text = text_of(area);
    return text == nullptr ? 0 : text->drop;
}

int shorten_of(const Area& area, std::size_t form) {
    if (const auto* code = std::get_if<CodeArea>(&area.kind)) {
        return order_of(code->shorten, form);
    }
    const auto* text = text_of(area);
    return text == nullptr ? 0 : order_of(text->shorten, form);
}

TypeSize type_at(const Area& area, Scale scale, const typeset::FontSet& fonts) {
    if (const auto* months = std::get_if<MonthsArea>(&area.kind)) {
        return type_at(*months, fonts);
    }
    const auto* text = text_of(area);
    return text == nullptr ? TypeSize{} : type_at(*text, scale, fonts);
}

Length natural_width(const Content& content, const Area& area, TypeSize type) {
    return std::visit([&](const auto& kind) { return natural_width(content, kind, type); },
                      area.kind);
}

Extent measure(const Content& content, const Area& area, TypeSize type, Length width,
               RowHeights rows) {
    return std::visit([&](const auto& kind) { return measure(content, kind, type, width, rows); },
                      area.kind);
}

std::vector<Item> draw(const Content& content, const Area& area, TypeSize type, Rect place,
                       const Ink& ink) {
    return std::visit([&](const auto& kind) { return draw(content, kind, type, place, ink); },
                      area.kind);
}

} // namespace thawslip::layout

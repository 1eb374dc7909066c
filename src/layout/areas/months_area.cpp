#include "layout/areas/months_area.h"

#include "layout/areas/entry.h"
#include "layout/areas/text_area.h"
#include "toml/file_table.h"

namespace thawslip::layout {
namespace {

using typeset::Weight;

/// The strip is as high as a line of its letters with a little air, its gap to the year an em.
constexpr double strip_height = 1.16;

/// One letter or the year, in the middle of its field.
void set(std::vector<Item>& items, const PreparedEntry& entry, TypeSize type, Rect field,
         Tone tone) {
    const Length spare = field.size.width - type.size * entry.text.natural_width();
    for (const auto& line : entry.text.set(1e6)) {
        for (const auto& piece : line.pieces) {
            items.emplace_back(Text{
                piece.run,
                type.size,
                {field.left() + spare / 2 + type.size * piece.x, field.top() + type.leading * 0.75},
                tone});
        }
    }
}

} // namespace

void read(toml::Table& table, const PrintFields& /*fields*/, MonthsArea& area) {
    area.drop = static_cast<int>(table.integer({"drop", "1"}, {0, 99}).value_or(0));
}

TypeSize type_at(const MonthsArea& area, const typeset::FontSet& fonts) {
    const Length size = least_x_height * area.size / fonts.metrics(Weight::Medium).x_height;
    return {size, size * strip_height};
}

Result<Content, ContentFault> prepare(const MonthsArea& /*area*/, const wording::Print& print,
                                      Shaper& shaper) {
    const auto* field = print.field(wording::field_name::month_strip);
    std::vector<PreparedEntry> entries;
    for (std::size_t i = 0; field != nullptr && i < field->paragraphs.size(); ++i) {
        const auto& paragraph = field->paragraphs[i];
        const auto weight = paragraph.critical ? Weight::Bold : Weight::Medium;
        auto text = shaper.prepare({{paragraph.spans.front().text, weight}});
        if (!text) {
            return Failure{ContentFault{field->name, field->where, text.fault()}};
        }
        PreparedEntry entry{{}, {}, {}, false, std::move(text).value()};
        entry.critical = paragraph.critical;
        entries.push_back(std::move(entry));
    }
    return Content{std::move(entries)};
}

Length natural_width(const Content& /*content*/, const MonthsArea& /*area*/, TypeSize /*type*/) {
    return {};
}

Extent measure(const Content& content, const MonthsArea& /*area*/, TypeSize type, Length /*width*/,
               RowHeights /*rows*/) {
    return {.height = content.is_there() ? type.leading : Length{}};
}

std::vector<Item> draw(const Content& content, const MonthsArea& /*area*/, TypeSize type,
                       Rect place, const Ink& /*ink*/) {
    std::vector<Item> items;
    if (!content.is_there()) {
        return items;
    }
    const auto& entries = content.entries();
    const auto months = entries.size() - 1;
    const Length year = type.size * (entries.back().text.natural_width() + 0.5);
    const Length width = (place.size.width - year) / static_cast<double>(months);
    for (std::size_t i = 0; i < months; ++i) {
        const Rect field{{place.left() + width * static_cast<double>(i), place.top()},
                         {width, place.size.height}};
        if (entries[i].critical) {
            items.emplace_back(Rule{field});
        }
        set(items, entries[i], type, field, entries[i].critical ? Tone::White : Tone::Black);
    }
    items.emplace_back(Rule{{{place.left(), place.bottom() - thinnest_line},
                             {width * static_cast<double>(months), thinnest_line}}});
    set(items, entries.back(), type,
        {{place.right() - year, place.top()}, {year, place.size.height}}, Tone::Black);
    return items;
}

} // namespace thawslip::layout

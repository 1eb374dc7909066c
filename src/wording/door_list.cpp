#include "wording/door_list.h"

#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

#include <algorithm>
#include <tuple>

namespace thawslip::wording {
namespace {

Paragraph strong(const std::string& text) {
    auto paragraph = plain(text);
    paragraph.spans.front().emphasis = Emphasis::Strong;
    return paragraph;
}

std::string_view key_of(kitchen::ThawMethod method) {
    switch (method) {
    case kitchen::ThawMethod::Refrigerator: return "door-list.refrigerator";
    case kitchen::ThawMethod::ColdWater: return "door-list.cold-water";
    case kitchen::ThawMethod::Microwave: return "door-list.microwave";
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "door-list.from-frozen";
}

/// "refrigerator, 31 h"; the method alone where no time is known or none is needed.
std::string say_thaw_short(const DoorRow& row, const Style& style) {
    if (!row.thaw) {
        return {};
    }
    const auto method = style.say(key_of(*row.thaw));
    const bool timed = row.thaw_lead && *row.thaw != kitchen::ThawMethod::FromFrozen;
    return timed ? style.say("door-list.timed", {method, say_lead(*row.thaw_lead, style.language)})
                 : method;
}

Paragraph row_for(const DoorRow& row, const std::string& bag, const Style& style) {
    Paragraph paragraph;
    auto head = plain(style.say(row.basis == kitchen::DateBasis::SetByCook ? "door-list.use-by"
                                                                           : "door-list.best-by"));
    head.marker = Marker::TickBox;
    auto date =
        as_is(with_no_break_spaces(say_date(row.keep_until, style.language)), Emphasis::Strong);
    paragraph.cells = {std::move(head),
                       std::move(date),
                       strong(say_dish(row.dish, row.raw, style.language)),
                       plain(std::to_string(row.servings)),
                       as_is(unbroken(bag)),
                       plain(say_thaw_short(row, style))};
    return paragraph;
}

Paragraph heads(const Style& style) {
    Paragraph paragraph;
    paragraph.role = Role::ColumnHeads;
    paragraph.cells = {{}, {}};
    for (const char* key :
         {"door-list.dish", "door-list.serves", "door-list.bag", "door-list.thaw"}) {
        paragraph.cells.push_back(plain(style.say(key)));
    }
    return paragraph;
}

} // namespace

Print door_list(std::span<const DoorRow> rows, const Style& style) {
    std::vector<DoorRow> sorted{rows.begin(), rows.end()};
    std::ranges::stable_sort(sorted, {},
                             [](const DoorRow& row) { return std::tie(row.keep_until, row.dish); });
    Field field{field_name::rows, {heads(style)}, {}};
    for (const auto& row : sorted) {
        for (const auto& bag : row.bags) {
            field.paragraphs.push_back(row_for(row, bag, style));
        }
    }
    const auto count = field.paragraphs.size() - 1;
    Print print;
    print.kind = Kind::DoorList;
    print.dish = style.say("door-list.title");
    print.page_phrase = style.say("list.page");
    print.fields = {
        {field_name::title, {plain(print.dish)}, {}},
        {field_name::summary, {plain(style.say("door-list.how", {std::to_string(count)}))}, {}},
        std::move(field),
        {field_name::frozen_safe, {plain(style.say("standing.frozen-safe"))}, {}},
        local_rules_field(style),
    };
    return print;
}

} // namespace thawslip::wording

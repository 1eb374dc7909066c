#include "wording/door_list.h"

#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

#include <algorithm>
#include <iterator>
#include <tuple>

namespace thawslip::wording {
namespace {

Paragraph strong(const std::string& text) {
    auto paragraph = plain(text);
    paragraph.spans.front().emphasis = Emphasis::Strong;
    return paragraph;
}

std::string say_thaw_short(const DoorRow& row, const Style& style) {
    constexpr double running_water = 70; // °F; FDA Food Code 3-501.13 (B)
    switch (*row.thaw) {
    case kitchen::ThawMethod::Refrigerator: return style.say("door-list.refrigerator");
    case kitchen::ThawMethod::ColdWater:
        return style.say("door-list.cold-water", {say_cold_limit(running_water, style)});
    case kitchen::ThawMethod::Microwave: return style.say("door-list.microwave");
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return style.say("door-list.from-frozen");
}

/// "Thaw in the refrigerator, 31 h"; the method alone where no time is known or none is needed.
Paragraph thaw_line(const DoorRow& row, const Style& style) {
    auto method = say_thaw_short(row, style);
    if (row.thaw_lead && *row.thaw != kitchen::ThawMethod::FromFrozen) {
        method = style.say("door-list.timed", {method, say_lead(*row.thaw_lead, style.language)});
    }
    return labelled(say_thaw_label(*row.thaw, style.language), method);
}

/// The date with its phrase below it, so that neither stands without the other. A date of the
/// cook's is about safety, and its phrase is strong.
Paragraph date_cell(const DoorRow& row, const Style& style) {
    const bool set = row.basis == kitchen::DateBasis::SetByCook;
    auto cell = as_is(with_no_break_spaces(say_date_in_month(row.keep_until, style.language)),
                      Emphasis::Strong);
    cell.below = {set ? strong(style.say("door-list.use-by"))
                      : plain(style.say("door-list.best-by"))};
    return cell;
}

void add_allergens(Paragraph& line, std::string_view head, const std::string& names,
                   const Style& style) {
    if (!names.empty()) {
        add_sentence(line, style.say(head), {{typeset_text(names), Emphasis::Plain}});
    }
}

/// "Serves 6. Contains celery": what decides who is fed by it.
Paragraph people_line(const DoorRow& row, const Style& style) {
    auto line = plain(style.say("label.serves", {std::to_string(row.servings)}));
    if (!row.allergens) {
        add_allergens(line, "label.contains", style.say("door-list.see-label"), style);
        return line;
    }
    add_allergens(line, "label.contains", say_contains(row.allergens->contains, style), style);
    add_allergens(line, "label.may-contain", say_contains(row.allergens->may_contain, style),
                  style);
    add_allergens(line, "door-list.added", say_contains(row.allergens->added, style), style);
    return line;
}

Paragraph dish_cell(const DoorRow& row, const Style& style) {
    auto cell = strong(say_dish(row.dish, row.raw, style.language));
    cell.below = {people_line(row, style)};
    if (row.eaten_frozen) {
        cell.below.push_back(
            labelled(style.say("label.do-not-thaw"), style.say("thaw.eaten-frozen")));
    } else if (row.thaw) {
        cell.below.push_back(thaw_line(row, style));
    }
    return cell;
}

Paragraph boxes_cell(std::span<const DoorBag> bags, bool by_id) {
    Paragraph cell;
    for (const auto& bag : bags) {
        cell.boxes.push_back(by_id ? unbroken(bag.id) : std::to_string(bag.number));
    }
    return cell;
}

/// A row of the table; of many bags several, each with the dish and its date, for no row runs on to
/// another page.
std::vector<Paragraph> table_rows(const DoorRow& row, bool by_id, const Style& style) {
    const std::size_t most_boxes = by_id ? 20 : 30; // ids may stand below one another
    std::vector<Paragraph> rows;
    std::span<const DoorBag> bags{row.bags};
    do {
        const auto count = std::min(bags.size(), most_boxes);
        rows.emplace_back().cells = {date_cell(row, style), dish_cell(row, style),
                                     boxes_cell(bags.first(count), by_id)};
        bags = bags.subspan(count);
    } while (!bags.empty());
    return rows;
}

Paragraph month_heading(const DoorRow& row, const Style& style) {
    const auto month = say_month(row.keep_until, style.language);
    auto heading =
        plain(row.place.empty() ? month : style.say("door-list.at-place", {row.place, month}));
    heading.role = Role::Heading;
    return heading;
}

bool same_month(const DoorRow& a, const DoorRow& b) {
    return a.place == b.place && a.keep_until.year() == b.keep_until.year() &&
           a.keep_until.month() == b.keep_until.month();
}

auto date_and_dish(const DoorRow& row) {
    return std::tie(row.keep_until, row.dish);
}

bool comes_before(const DoorRow& a, const DoorRow& b) {
    const bool a_is_nowhere = a.place.empty();
    const bool b_is_nowhere = b.place.empty();
    // Of a dish in sizes the largest first; rows that say the same then stand together.
    return std::tie(a_is_nowhere, a.place, a.keep_until, a.dish, b.servings) <
           std::tie(b_is_nowhere, b.place, b.keep_until, b.dish, a.servings);
}

/// Rows in order, below the headings of their months.
Field rows_field(std::vector<DoorRow> rows, const Style& style) {
    std::ranges::stable_sort(rows, comes_before);
    for (auto& row : rows) {
        std::ranges::stable_sort(row.bags, {}, &DoorBag::number);
    }
    Field field{field_name::rows, {}, {}};
    for (std::size_t i = 0; i < rows.size(); ++i) {
        if (i == 0 || !same_month(rows[i - 1], rows[i])) {
            field.paragraphs.push_back(month_heading(rows[i], style));
        }
        const auto says_the_same = [&](std::size_t other) { // past either end there is none
            return other < rows.size() && date_and_dish(rows[other]) == date_and_dish(rows[i]) &&
                   rows[other].servings == rows[i].servings;
        };
        const bool by_id = says_the_same(i - 1) || says_the_same(i + 1);
        std::ranges::move(table_rows(rows[i], by_id, style), std::back_inserter(field.paragraphs));
    }
    return field;
}

/// What the dates mean once they are past: of both kinds, where the rows have both.
Field dates_note(std::span<const DoorRow> rows, const Style& style) {
    const auto is_set = [](const DoorRow& row) {
        return row.basis == kitchen::DateBasis::SetByCook;
    };
    if (std::ranges::none_of(rows, is_set)) {
        return frozen_safe_field(style);
    }
    Field field{field_name::frozen_safe, {}, {}};
    if (!std::ranges::all_of(rows, is_set)) {
        field.paragraphs.push_back(plain(style.say(
            "door-list.frozen-safe", {say_always_safe(style), style.say("door-list.best-by"),
                                      style.say("door-list.use-by")})));
    }
    return field;
}

Field printed_on_field(std::optional<kitchen::Date> day, const Style& style) {
    Field field{field_name::printed_on, {}, {}};
    if (day) {
        const auto date = with_no_break_spaces(say_date(*day, style.language));
        field.paragraphs.push_back(as_is(style.say("door-list.printed-on", {date})));
    }
    return field;
}

std::size_t count_bags(std::span<const DoorRow> rows) {
    std::size_t count = 0;
    for (const auto& row : rows) {
        count += row.bags.size();
    }
    return count;
}

} // namespace

Print door_list(std::span<const DoorRow> rows, const Style& style,
                std::optional<kitchen::Date> printed_on) {
    const auto count = std::to_string(count_bags(rows));
    Print print;
    print.kind = Kind::DoorList;
    print.dish = style.say("door-list.title");
    print.page_phrase = style.say("list.page");
    print.continued_phrase = style.say("list.continued");
    print.fields = {
        {field_name::title, {plain(print.dish)}, {}},
        printed_on_field(printed_on, style),
        {field_name::summary, {plain(style.say("door-list.how", {count}))}, {}},
        rows_field({rows.begin(), rows.end()}, style),
        dates_note(rows, style),
        {field_name::allergens_note, {plain(style.say("door-list.allergens"))}, {}},
        local_rules_field(style),
    };
    return print;
}

} // namespace thawslip::wording

#include "wording/freezing_plan.h"

#include "base/list.h"
#include "wording/fields.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using kitchen::DishBags;

/// "bag 2", "bags 1–3": by the numbers on their labels.
std::string numbers_text(const DishBags& dish, const Style& style) {
    std::vector<int> numbers;
    for (const auto& bag : dish.planned->bags) {
        if (std::ranges::find(dish.bags, bag.id) != dish.bags.end()) {
            numbers.push_back(bag.number);
        }
    }
    const auto* key = numbers.size() == 1 ? "freezing.bag" : "freezing.bags";
    return style.say(key, {say_numbers(std::move(numbers), style.language)});
}

/// "Squash and red lentil stew (bags 1, 2); Plum and ginger compote (bag 1)".
std::string bags_text(const kitchen::Plan& plan, const std::vector<std::string>& bags,
                      const Style& style) {
    return joined(by_dish(plan, bags), "; ", [&style](const auto& dish) {
        return style.say("freezing.dish", {typeset_text(say_sized(dish.planned->package, style)),
                                           numbers_text(dish, style)});
    });
}

/// A row with its box for each dish of these bags: when they go in and what they weigh together,
/// the dish, its bags.
void add_rows(Field& field, const kitchen::Plan& plan, const Paragraph& when,
              const std::vector<std::string>& bags, const Style& style) {
    for (const auto& dish : by_dish(plan, bags)) {
        auto name = plain(say_sized_dish(dish.planned->package, dish.planned->raw, style));
        name.marker = Marker::TickBox;
        Paragraph row;
        row.cells = {when, std::move(name), as_is(numbers_text(dish, style))};
        field.paragraphs.push_back(std::move(row));
    }
}

Paragraph when_cell(const std::string& when, kitchen::Mass weight, const Style& style) {
    auto cell = as_is(when, Emphasis::Strong);
    cell.below = {as_is(say_weight(weight, style))};
    return cell;
}

std::string_view verdict_key(const kitchen::FreezerLoad& load) {
    switch (load.verdict) {
    case kitchen::LoadVerdict::Within:
        return load.without_weight.empty() ? "freezing.within" : "freezing.within-weighed";
    case kitchen::LoadVerdict::Near: return "freezing.near";
    case kitchen::LoadVerdict::Over: break;
    }
    return load.batches.size() > 1 ? "freezing.over" : "freezing.over-today";
}

void add_batches(Field& field, const kitchen::Plan& plan, const Style& style) {
    const auto& batches = plan.freezer_load->batches;
    for (std::size_t i = 0; i < batches.size(); ++i) {
        const auto day = std::chrono::sys_days{plan.made} + std::chrono::days{i};
        const auto date = with_no_break_spaces(say_date(kitchen::Date{day}, style.language));
        const auto when = style.say("freezing.batch", {std::to_string(i + 1), date});
        add_rows(field, plan, when_cell(when, batches[i].weight, style), batches[i].bags, style);
    }
}

/// What no batch may take, with its boxes: it is gone from the refrigerator before the day is over.
void add_elsewhere(Field& field, const kitchen::Plan& plan, const Style& style) {
    const auto& load = *plan.freezer_load;
    add_rows(field, plan, when_cell(style.say("freezing.elsewhere"), load.elsewhere_weight, style),
             load.elsewhere, style);
    field.paragraphs.push_back(plain(style.say("freezing.elsewhere-how")));
}

void add_load(Field& field, const kitchen::Plan& plan, const Style& style) {
    if (!plan.freezer_load) {
        field.paragraphs.push_back(plain(style.say("freezing.size-unknown")));
        return;
    }
    const auto& load = *plan.freezer_load;
    const auto verdict = style.say(verdict_key(load), {std::to_string(load.batches.size())});
    field.paragraphs.push_back(plain(style.say(
        "freezing.load", {say_weight(load.total, style), say_weight(load.limit_low, style),
                          say_weight(load.limit_high, style), verdict})));
    add_batches(field, plan, style);
    if (!load.elsewhere.empty()) {
        add_elsewhere(field, plan, style);
    }
    for (const auto& [key, bags] : {std::pair{"freezing.too-heavy", &load.too_heavy},
                                    std::pair{"freezing.not-weighed", &load.without_weight}}) {
        if (!bags->empty()) {
            field.paragraphs.push_back(as_is(style.say(key, {bags_text(plan, *bags, style)})));
        }
    }
}

} // namespace

std::string say_bag_count(std::size_t bags, const Style& style) {
    return style.language.say_count("day-sheet.bag", "day-sheet.bags", bags);
}

void add_day_cautions(Field& field, const kitchen::Plan& plan, const Style& style) {
    for (const auto& caution : plan.cautions) {
        field.paragraphs.push_back(plain(capitalised(say_caution(caution, style.language)) + "."));
    }
}

Field cooling_field(const kitchen::Plan& plan, const Style& style) {
    Field field{field_name::freezing, {heading(style.say("freezing.title"))}, KeyPath{"day"}};
    add_day_cautions(field, plan, style);
    return field;
}

Field freezing_field(const kitchen::Plan& plan, const Style& style) {
    auto field = cooling_field(plan, style);
    add_load(field, plan, style);
    return field;
}

} // namespace thawslip::wording

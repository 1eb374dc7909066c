#include "wording/freezing_plan.h"

#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

/// "Squash and red lentil stew (A, B); Plum and ginger compote (C)": bags by their dishes.
std::string bags_text(const kitchen::Plan& plan, const std::vector<std::string>& bags,
                      const Style& style) {
    std::string text;
    for (const auto& dish : by_dish(plan, bags)) {
        std::string ids;
        for (const auto& bag : dish.bags) {
            ids += (ids.empty() ? "" : ", ") + unbroken(bag);
        }
        text += (text.empty() ? "" : "; ") +
                style.say("freezing.dish", {typeset_text(dish.planned->package.dish), ids});
    }
    return text;
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
        auto line = as_is(say_weight(batches[i].weight, style) + ": " +
                          bags_text(plan, batches[i].bags, style));
        line.marker = Marker::TickBox;
        line.label = style.say(
            "freezing.batch", {std::to_string(i + 1),
                               with_no_break_spaces(say_date(kitchen::Date{day}, style.language))});
        field.paragraphs.push_back(std::move(line));
    }
}

/// What no batch may take, with its box: it is gone from the refrigerator before the day is over.
void add_elsewhere(Field& field, const kitchen::Plan& plan, const Style& style) {
    const auto& load = *plan.freezer_load;
    auto line = as_is(say_weight(load.elsewhere_weight, style) + ": " +
                      bags_text(plan, load.elsewhere, style));
    line.marker = Marker::TickBox;
    line.label = style.say("freezing.elsewhere");
    field.paragraphs.push_back(std::move(line));
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
    return bags == 1 ? style.say("day-sheet.bag")
                     : style.say("day-sheet.bags", {std::to_string(bags)});
}

Field freezing_field(const kitchen::Plan& plan, const Style& style) {
    auto heading = plain(style.say("freezing.title"));
    heading.role = Role::Heading;
    Field field{field_name::freezing, {std::move(heading)}, KeyPath{"day"}};
    for (const auto& caution : plan.cautions) {
        auto line = plain(capitalised(say_caution(caution, style.language)) + ".");
        line.marker = Marker::TickBox;
        field.paragraphs.push_back(std::move(line));
    }
    add_load(field, plan, style);
    return field;
}

} // namespace thawslip::wording

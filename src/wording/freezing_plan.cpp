#include "wording/freezing_plan.h"

#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

/// "Squash and red lentil stew (A, B); Plum and ginger compote (C)": bags by their dishes.
std::string by_dish(const kitchen::Plan& plan, const std::vector<std::string>& bags,
                    const Style& style) {
    std::string text;
    for (const auto& planned : plan.packages) {
        std::string ids;
        for (const auto& bag : planned.bags) {
            if (std::ranges::find(bags, bag.id) != bags.end()) {
                ids += (ids.empty() ? "" : ", ") + unbroken(bag.id);
            }
        }
        if (!ids.empty()) {
            text += (text.empty() ? "" : "; ") +
                    style.say("freezing.dish", {typeset_text(planned.package.dish), ids});
        }
    }
    return text;
}

std::string_view verdict_key(kitchen::LoadVerdict verdict) {
    switch (verdict) {
    case kitchen::LoadVerdict::Within: return "freezing.within";
    case kitchen::LoadVerdict::Near: return "freezing.near";
    case kitchen::LoadVerdict::Over: break;
    }
    return "freezing.over";
}

void add_batches(Field& field, const kitchen::Plan& plan, const Style& style) {
    const auto& batches = plan.freezer_load->batches;
    for (std::size_t i = 0; i < batches.size(); ++i) {
        const auto day = std::chrono::sys_days{plan.made} + std::chrono::days{i};
        auto line = as_is(say_weight(batches[i].weight, style) + ": " +
                          by_dish(plan, batches[i].bags, style));
        line.marker = Marker::TickBox;
        line.label = style.say(
            "freezing.batch", {std::to_string(i + 1),
                               with_no_break_spaces(say_date(kitchen::Date{day}, style.language))});
        field.paragraphs.push_back(std::move(line));
    }
}

void add_load(Field& field, const kitchen::Plan& plan, const Style& style) {
    if (!plan.freezer_load) {
        field.paragraphs.push_back(plain(style.say("freezing.size-unknown")));
        return;
    }
    const auto& load = *plan.freezer_load;
    const auto verdict =
        style.say(verdict_key(load.verdict), {std::to_string(load.batches.size())});
    field.paragraphs.push_back(plain(style.say(
        "freezing.load", {say_weight(load.total, style), say_weight(load.limit_low, style),
                          say_weight(load.limit_high, style), verdict})));
    add_batches(field, plan, style);
    for (const auto& [key, bags] : {std::pair{"freezing.too-heavy", &load.too_heavy},
                                    std::pair{"freezing.not-weighed", &load.without_weight}}) {
        if (!bags->empty()) {
            field.paragraphs.push_back(as_is(style.say(key, {by_dish(plan, *bags, style)})));
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
    Field field{"freezing", {std::move(heading)}, KeyPath{"day"}};
    for (const auto& caution : plan.cautions) {
        auto line = plain(capitalised(say_caution(caution, style.language)) + ".");
        line.marker = Marker::TickBox;
        field.paragraphs.push_back(std::move(line));
    }
    add_load(field, plan, style);
    return field;
}

} // namespace thawslip::wording

#include "base/list.h"
#include "kitchen/figures.h"
#include "wording/cook_sequence_words.h"
#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/side_words.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

Paragraph moment(std::string_view label, std::string_view text) {
    auto paragraph = plain(text);
    paragraph.label = capitalised(label);
    return paragraph;
}

/// The cooking as a list of moments: the start, each addition when it goes in, done.
Field timeline(const kitchen::PlannedPackage& planned, const Style& style) {
    Field field{field_name::timeline, {}, planned.package.where.key("cook")};
    const auto& cook = planned.package.cook;
    if (cook) {
        field.paragraphs.push_back(
            moment(style.say("cook-day-card.start"), capitalised(say_cooking(*cook, style))));
    }
    for (const auto& finish : planned.finish) {
        auto line = moment(say_when_head(finish.when, style.language),
                           style.say("label.add") + " " + say_addition(finish, style));
        line.marker = Marker::TickBox;
        field.paragraphs.push_back(std::move(line));
    }
    for (const auto& start : kitchen::side_starts(planned)) {
        std::ranges::move(side_lines(start, planned, style), std::back_inserter(field.paragraphs));
    }
    if (cook && cook->until) {
        field.paragraphs.push_back(
            moment(style.say("cook-day-card.done"),
                   style.say("cook-day-card.done-at", {say_target(*cook->until, style)})));
    }
    return field;
}

Field steps(const kitchen::PlannedPackage& planned) {
    Field field{field_name::steps, {}, planned.package.where.key("cook").key("steps")};
    if (!planned.package.cook) {
        return field;
    }
    int number = 0;
    for (const auto& step : planned.package.cook->steps) {
        auto paragraph = plain(step);
        paragraph.marker = Marker::Number;
        paragraph.number = ++number;
        field.paragraphs.push_back(std::move(paragraph));
    }
    return field;
}

/// "Start thawing 31 h before cooking": what has to be thought of first.
Field thaw_start(const kitchen::PlannedPackage& planned, const Style& style) {
    Field field{field_name::thaw_start, {}, planned.package.thaw.where};
    if (const auto allowed = kitchen::allowed_thaw(planned)) {
        const auto lead = say_lead_in_days(*allowed, style.language);
        const auto* key = is_eaten_as_it_is(planned) ? "cook-day-card.thaw-start-eaten"
                                                     : "cook-day-card.thaw-start";
        field.paragraphs.push_back(as_is(typeset_text(style.say(key, {lead})), Emphasis::Strong));
    }
    return field;
}

Field bags(const kitchen::PlannedPackage& planned, const Style& style) {
    constexpr std::size_t most_listed = 6;
    if (planned.bags.size() > most_listed) {
        const auto count = std::to_string(planned.bags.size());
        return {field_name::bags, {plain(style.say("cook-day-card.bag-count", {count}))}, {}};
    }
    const auto ids =
        joined(planned.bags, ", ", [](const kitchen::Bag& bag) { return unbroken(bag.id); });
    // Not typeset as prose: the dash of an id is part of it.
    Paragraph paragraph;
    paragraph.spans.push_back({style.say("cook-day-card.bags", {ids}), Emphasis::Plain});
    return {field_name::bags, {std::move(paragraph)}, {}};
}

Field frozen_safe(const kitchen::PlannedPackage& planned, const Style& style) {
    return planned.keep_until.basis == kitchen::DateBasis::StorageTable
               ? frozen_safe_field(style)
               : Field{field_name::frozen_safe, {}, {}};
}

} // namespace

Print cook_day_card(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                    const Style& style) {
    Print print;
    print.kind = Kind::CookDayCard;
    print.page_phrase = style.say("cook-day-card.page");
    print.more_phrase = style.say("cook-day-card.more-on");
    print.dish = planned.package.dish;
    print.where = planned.package.where;
    print.fields = {
        {field_name::title, {plain(style.say("cook-day-card.title"))}, {}},
        mark_field(planned),
        raw_field(planned, style),
        dish_field(planned),
        servings_field(planned, style),
        bags(planned, style),
        place_field(planned),
        made_field(planned, style),
        keep_until_field(planned, style),
        limit_phrase_field(planned, style),
        limit_date_field(planned, style),
        thaw_start(planned, style),
        thaw_field_with_advice(planned, style),
        other_thaws_field_with_advice(planned, style),
        until_field(planned, style),
        sequence_field(planned, style),
        timeline(planned, style),
        steps(planned),
        contains_field_with_added(planned, style),
        note_field(planned, style),
        cautions_field(planned, kitchen::CautionLevel::Card, style),
        frozen_safe(planned, style),
        kitchen_field(plan.kitchen, style),
        local_rules_field(style),
    };
    print.has_code = !planned.bags.empty();
    return print;
}

} // namespace thawslip::wording

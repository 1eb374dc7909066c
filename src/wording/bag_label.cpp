#include "base/list.h"
#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

/// A label has no room to say amounts twice: where both systems are set, they stand as written, and
/// the cards convert them. Temperatures, on which safety hangs, are said in both all the same.
Style amounts_once(Style style) {
    if (style.units.units == kitchen::Units::Both) {
        style.units.units = kitchen::Units::Written;
    }
    return style;
}

/// What is added, a paragraph a moment: on a label there is no room for a column, and what goes in
/// together is said together.
std::vector<Paragraph> additions(const kitchen::PlannedPackage& planned, const Style& style,
                                 Waits waits) {
    std::vector<Paragraph> paragraphs;
    const auto said = mapped(planned.finish, [&](const kitchen::Finish& finish) {
        return say_addition(finish, style, waits);
    });
    for (std::size_t i = 0; i < planned.finish.size(); ++i) {
        const auto& finish = planned.finish[i];
        // The colon keeps "10 min" and "200 g" apart.
        auto line = labelled(
            style.say("label.add") + " " + say_when(finish.when, style.language) + ":", said[i]);
        if (goes_in_with_previous(planned.finish, i)) {
            auto& spans = paragraphs.back().spans;
            spans.push_back({std::string{between(said)}, Emphasis::Plain});
            spans.insert(spans.end(), line.spans.begin(), line.spans.end());
        } else {
            paragraphs.push_back(std::move(line));
        }
    }
    return paragraphs;
}

/// The additions; shorter, without where they wait; and shorter again, how many there are.
Field finish_lines(const kitchen::PlannedPackage& planned, const Style& style) {
    Field field{field_name::finish, {}, planned.package.where.key("finish")};
    field.paragraphs = additions(planned, style, Waits::Said);
    if (!field.paragraphs.empty()) {
        const auto count = planned.finish.size();
        const auto things =
            style.language.say_count("label.one-addition", "label.additions", count);
        field.shorter = {additions(planned, style, Waits::Unsaid),
                         {labelled(style.say("label.add"), things)},
                         {labelled(style.say("label.add"),
                                   style.say("label.least-see-card", {std::to_string(count)}))}};
    }
    return field;
}

/// Where the rest of how a dish is cooked stands: in the code, or on its card alone.
enum class Steps { InCode, OnCard };

Field cook_line(const kitchen::PlannedPackage& planned, Steps steps, const Style& style) {
    Field field{field_name::cook, {}, planned.package.where.key("cook")};
    if (!planned.package.cook) {
        return field;
    }
    const auto& cook = *planned.package.cook;
    const auto line = [&](const std::string& text) {
        return std::vector{labelled(style.say("label.cook"), text)};
    };
    const bool sends_on = steps == Steps::OnCard && !cook.steps.empty();
    const auto how = say_cooking(cook, style);
    const auto in_full = [&](const std::string& text) {
        return line(sends_on ? text + "; " + style.say("label.steps-see-card") : text);
    };
    const auto sent_on = [&](const std::string& text) {
        return style.say("label.least-see-card", {text});
    };
    if (!cook.until) {
        field.paragraphs = in_full(how);
        field.shorter = {line(style.say("label.see-card"))};
        return field;
    }
    const auto target = say_target(*cook.until, style);
    const auto least = style.say("cook.until-short", {target});
    field.paragraphs = in_full(how + ", " + style.say("cook.until", {target}));
    const auto both = how + ", " + least;
    field.shorter = {line(sends_on ? sent_on(both) : both),
                     line(style.say("label.until-see-card", {target})), line(sent_on(least))};
    return field;
}

} // namespace

std::vector<Field> bag_fields(const kitchen::Bag& bag, const Style& style) {
    return {bag_field(bag, style), id_field(bag)};
}

Print bag_label(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                const kitchen::Bag& bag, const Style& style) {
    Print print;
    print.kind = Kind::BagLabel;
    print.dish = planned.package.dish;
    print.bag_id = bag.id;
    print.where = planned.package.where;
    print.fields = {
        mark_field(planned),
        month_strip_field(planned, style),
        raw_field(planned, style),
        dish_field(planned, plan),
        servings_field(planned, style),
        bag_field(bag, style),
        id_field(bag),
        place_field(planned),
        made_field(planned, style),
        keep_until_field(planned, style),
        limit_phrase_field(planned, style),
        limit_date_field(planned, style),
        thaw_field(planned, style),
        other_thaws_field(planned, style),
        finish_lines(planned, amounts_once(style)),
        cook_line(planned, Steps::InCode, style),
        contains_field(planned, style),
        note_field(planned, style),
        kitchen_field(plan.kitchen, style),
        cautions_field(planned, kitchen::CautionLevel::LabelAndCard, style),
        local_rules_field(style),
    };
    print.has_code = true;
    print.if_code_is_cut = {cook_line(planned, Steps::OnCard, style)};
    return print;
}

} // namespace thawslip::wording

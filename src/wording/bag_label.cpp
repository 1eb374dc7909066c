#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

/// A label has no room to say amounts twice: where both systems are set, they stand as written, and
/// the cards turn them over. Temperatures, on which safety hangs, are said in both all the same.
Style amounts_once(Style style) {
    if (style.units.units == kitchen::Units::Both) {
        style.units.units = kitchen::Units::Written;
    }
    return style;
}

/// On a label there is no room for a column: when it goes in stands first, strong.
Field finish_lines(const kitchen::PlannedPackage& planned, const Style& style) {
    Field field{field_name::finish, {}, planned.package.where.key("finish")};
    for (const auto& finish : planned.finish) {
        const auto head = style.say("label.add") + " " + say_when(finish.when, style.language);
        field.paragraphs.push_back(labelled(head, say_addition(finish, style)));
    }
    return field;
}

Field cook_line(const kitchen::PlannedPackage& planned, const Style& style) {
    Field field{field_name::cook, {}, planned.package.where.key("cook")};
    if (!planned.package.cook) {
        return field;
    }
    const auto& cook = *planned.package.cook;
    auto text = say_cooking(cook, style);
    if (cook.until) {
        text += ", " + style.say("cook.until", {say_target(*cook.until, style)});
    }
    field.paragraphs.push_back(labelled(style.say("label.cook"), text));
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
        raw_field(planned, style),
        dish_field(planned),
        servings_field(planned, style),
        bag_field(bag, style),
        id_field(bag),
        made_field(planned, style),
        keep_until_field(planned, style),
        thaw_field(planned, style),
        finish_lines(planned, amounts_once(style)),
        cook_line(planned, style),
        contains_field(planned, style),
        note_field(planned, style),
        kitchen_field(plan.kitchen, style),
        cautions_field(planned, kitchen::CautionLevel::LabelAndCard, style),
        local_rules_field(style),
    };
    print.has_code = true;
    return print;
}

} // namespace thawslip::wording

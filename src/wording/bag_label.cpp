#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/prints.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

/// On a label there is no room for a column: when it goes in stands first, strong.
Field finish_lines(const kitchen::PlannedPackage& planned, const Language& language) {
    Field field{"finish", {}, planned.package.where.key("finish")};
    for (const auto& finish : planned.finish) {
        const auto head = language.say("label.add") + " " + say_when(finish.when, language);
        field.paragraphs.push_back(labelled(head, say_addition(finish)));
    }
    return field;
}

Field cook_line(const kitchen::PlannedPackage& planned, const Language& language) {
    Field field{"cook", {}, planned.package.where.key("cook")};
    if (!planned.package.cook) {
        return field;
    }
    const auto& cook = *planned.package.cook;
    auto text = say_cooking(cook, language);
    if (cook.until) {
        text += ", " + language.say("cook.until", {say_temperature(*cook.until, language)});
    }
    field.paragraphs.push_back(labelled(language.say("label.cook"), text));
    return field;
}

} // namespace

Print bag_label(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                const kitchen::Bag& bag, const Language& language) {
    Print print;
    print.kind = Kind::BagLabel;
    print.dish = planned.package.dish;
    print.bag_id = bag.id;
    print.where = planned.package.where;
    print.fields = {
        dish_field(planned),
        servings_field(planned, language),
        bag_field(bag, language),
        id_field(bag),
        made_field(planned, language),
        keep_until_field(planned, language),
        thaw_field(planned, language),
        finish_lines(planned, language),
        cook_line(planned, language),
        contains_field(planned, language),
        note_field(planned, language),
        kitchen_field(plan.kitchen, language),
        cautions_field(planned, kitchen::CautionLevel::LabelAndCard, language),
        local_rules_field(language),
    };
    print.has_code = true;
    return print;
}

} // namespace thawslip::wording

#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

Field title(const Style& style) {
    return {field_name::title, {plain(style.say("finishing-card.title"))}, {}};
}

/// A tick box, when it goes in, and what goes in: one line for each ingredient.
Field finish_list(const kitchen::PlannedPackage& planned, const Style& style) {
    Field field{field_name::finish, {}, planned.package.where.key("finish")};
    for (const auto& finish : planned.finish) {
        auto line = plain(say_addition(finish, style));
        line.marker = Marker::TickBox;
        line.label = capitalised(say_when(finish.when, style.language));
        field.paragraphs.push_back(std::move(line));
    }
    return field;
}

} // namespace

Print finishing_card(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                     const kitchen::Bag& bag, const Style& style) {
    Print print;
    print.kind = Kind::FinishingCard;
    print.dish = planned.package.dish;
    print.bag_id = bag.id;
    print.where = planned.package.where;
    print.fields = {
        title(style),
        mark_field(planned),
        raw_field(planned, style),
        dish_field(planned),
        servings_field(planned, style),
        bag_field(bag, style),
        id_field(bag),
        made_field(planned, style),
        keep_until_field(planned, style),
        finish_list(planned, style),
        kitchen_field(plan.kitchen, style),
        local_rules_field(style),
    };
    return print;
}

} // namespace thawslip::wording

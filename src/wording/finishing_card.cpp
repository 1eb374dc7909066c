#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/prints.h"
#include "wording/typography.h"

namespace thawslip::wording {
namespace {

Field title(const Language& language) {
    return {"title", {plain(language.say("finishing-card.title"))}, {}};
}

/// A tick box, when it goes in, and what goes in: one line for each ingredient.
Field finish_list(const kitchen::PlannedPackage& planned, const Language& language) {
    Field field{"finish", {}, planned.package.where.key("finish")};
    for (const auto& finish : planned.finish) {
        auto line = plain(say_addition(finish));
        line.marker = Marker::TickBox;
        line.label = capitalised(say_when(finish.when, language));
        field.paragraphs.push_back(std::move(line));
    }
    return field;
}

} // namespace

Print finishing_card(const kitchen::Plan& plan, const kitchen::PlannedPackage& planned,
                     const kitchen::Bag& bag, const Language& language) {
    Print print;
    print.kind = Kind::FinishingCard;
    print.dish = planned.package.dish;
    print.bag_id = bag.id;
    print.where = planned.package.where;
    print.fields = {
        title(language),
        dish_field(planned),
        servings_field(planned, language),
        bag_field(bag, language),
        id_field(bag),
        made_field(planned, language),
        keep_until_field(planned, language),
        finish_list(planned, language),
        kitchen_field(plan.kitchen, language),
        local_rules_field(language),
    };
    return print;
}

} // namespace thawslip::wording

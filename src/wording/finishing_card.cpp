#include "kitchen/allergens/added_allergens.h"
#include "kitchen/allergens/allergens.h"
#include "wording/cook_sequence_words.h"
#include "wording/fields.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/prints.h"
#include "wording/side_words.h"
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
        line.label = say_when_head(finish.when, style.language);
        field.paragraphs.push_back(std::move(line));
    }
    return field;
}

Field finish_count(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto count = planned.finish.size();
    Field field{field_name::finish_count, {}, planned.package.where.key("finish")};
    if (count > 0) { // else there are sides alone
        field.paragraphs = {plain(
            style.language.say_count("finishing-card.thing", "finishing-card.things", count))};
    }
    return field;
}

/// The allergens that the words of the additions name, where the list in force asks for them or the
/// cook declares them. Where they name none nothing is said: what is in a stock cube is not known.
Field contains_of_finish(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto found =
        kitchen::added_allergens(planned.package, planned.allergens, *style.allergens);
    Field field{field_name::contains_of_finish, {}, planned.package.where.key("finish")};
    if (!found.empty()) {
        field.paragraphs.push_back(
            labelled(style.say("finishing-card.contains"), say_contains(found, style)));
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
        place_field(planned),
        made_field(planned, style),
        keep_until_field(planned, style),
        limit_phrase_field(planned, style),
        limit_date_field(planned, style),
        finish_list(planned, style),
        finish_grouped_field(planned, style),
        sides_field(planned, style),
        finish_count(planned, style),
        contains_of_finish(planned, style),
        until_field(planned, style),
        {field_name::pen_notes, {plain(style.say("finishing-card.notes"))}, {}},
        kitchen_field(plan.kitchen, style),
        local_rules_field(style),
    };
    return print;
}

} // namespace thawslip::wording

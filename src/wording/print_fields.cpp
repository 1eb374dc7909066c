#include "wording/print_fields.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

namespace name = field_name;
using enum Kind;
using enum Stays;

struct Row {
    const char* name;
    Stays stays;
    std::vector<Kind> on;
};

const Row rows[] = {
    {name::mark, IfRoom, {BagLabel, FinishingCard, CookDayCard}},
    {name::month_strip, IfRoom, {BagLabel}},
    {name::raw, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::dish, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::servings, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::bag, IfRoom, {BagLabel, FinishingCard}},
    {name::id, IfRoom, {BagLabel, FinishingCard}},
    {name::made, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::use_by, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::thaw, Always, {BagLabel, CookDayCard}},
    {name::finish, Always, {BagLabel, FinishingCard}},
    {name::cook, IfRoom, {BagLabel}},
    {name::contains, Always, {BagLabel, CookDayCard}},
    {name::note, Always, {BagLabel, CookDayCard}},
    {name::kitchen, IfRoom, {BagLabel, FinishingCard, CookDayCard, DaySheet}},
    {name::cautions, Always, {BagLabel, CookDayCard}},
    {name::local_rules,
     Always,
     {BagLabel, FinishingCard, CookDayCard, DoorList, DaySheet, PlanSheet}},
    {name::title, IfRoom, {FinishingCard, CookDayCard, DoorList, DaySheet, PlanSheet}},
    {name::page, IfRoom, {CookDayCard, DoorList, DaySheet, PlanSheet}},
    {name::bags, IfRoom, {CookDayCard}},
    {name::timeline, Always, {CookDayCard}},
    {name::steps, Always, {CookDayCard}},
    {name::frozen_safe, IfRoom, {CookDayCard, DoorList}},
    {name::summary, IfRoom, {DoorList}},
    {name::rows, Always, {DoorList}},
    {name::date, IfRoom, {DaySheet, PlanSheet}},
    {name::dishes, Always, {DaySheet}},
    {name::freezing, Always, {DaySheet}},
    {name::shopping, Always, {DaySheet}},
    {name::remarks, Always, {PlanSheet}},
    {name::lanes, Always, {PlanSheet}},
    {name::dish_numbers, IfRoom, {DaySheet}},
    {name::printed_on, IfRoom, {DoorList}},
    {name::allergens_note, Always, {DoorList}},
};

} // namespace

std::vector<FieldOfKind> fields_of(Kind kind) {
    std::vector<FieldOfKind> fields;
    for (const auto& row : rows) {
        if (std::ranges::find(row.on, kind) != row.on.end()) {
            fields.push_back({row.name, row.stays});
        }
    }
    return fields;
}

} // namespace thawslip::wording

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
    std::vector<std::string> said_by = {};
};

const Row rows[] = {
    {name::mark, IfRoom, {BagLabel, FinishingCard, CookDayCard}},
    {name::month_strip, IfRoom, {BagLabel}},
    {name::raw, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::dish, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::servings, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::bag, IfRoom, {BagLabel, FinishingCard}},
    {name::id, IfRoom, {BagLabel, FinishingCard}},
    {name::place, IfRoom, {BagLabel, FinishingCard, CookDayCard}},
    {name::made, Always, {BagLabel, FinishingCard, CookDayCard}},
    {name::use_by,
     Always,
     {BagLabel, FinishingCard, CookDayCard},
     {name::limit_phrase, name::limit_date}},
    {name::limit_phrase, Always, {BagLabel, FinishingCard, CookDayCard}, {name::use_by}},
    {name::limit_date, Always, {BagLabel, FinishingCard, CookDayCard}, {name::use_by}},
    {name::thaw, Always, {BagLabel, CookDayCard}},
    {name::other_thaws, IfRoom, {BagLabel, CookDayCard}},
    {name::sides, IfRoom, {FinishingCard}},
    {name::finish, Always, {BagLabel, FinishingCard}, {name::finish_grouped}},
    {name::finish_grouped, Always, {FinishingCard}, {name::finish}},
    {name::finish_count, IfRoom, {FinishingCard}},
    {name::contains_of_finish, Always, {FinishingCard}},
    {name::until, IfRoom, {FinishingCard, CookDayCard}},
    {name::pen_notes, IfRoom, {FinishingCard}},
    {name::thaw_start, IfRoom, {CookDayCard}},
    {name::sequence, Always, {CookDayCard}, {name::timeline, name::steps}},
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
    {name::timeline, Always, {CookDayCard}, {name::sequence}},
    {name::steps, Always, {CookDayCard}, {name::sequence}},
    {name::frozen_safe, IfRoom, {CookDayCard, DoorList}},
    {name::summary, IfRoom, {DoorList}},
    {name::rows, Always, {DoorList}},
    {name::date, IfRoom, {DaySheet, PlanSheet}},
    {name::dishes, Always, {DaySheet}},
    {name::freezing, Always, {DaySheet}},
    {name::shopping, Always, {DaySheet}},
    {name::remarks, Always, {PlanSheet}},
    {name::lanes, Always, {PlanSheet}},
    {name::in_order, Always, {PlanSheet}},
    {name::dish_numbers, IfRoom, {DaySheet}},
    {name::printed_on, IfRoom, {DoorList}},
    {name::allergens_note, Always, {DoorList}},
};

bool is_on(std::string_view name, Kind kind) {
    const auto* row = std::ranges::find(rows, name, &Row::name);
    return row != std::end(rows) && std::ranges::find(row->on, kind) != row->on.end();
}

/// What says all of a field on prints of a kind; nothing where not all of it is on them.
std::vector<std::string> said_by(const Row& row, Kind kind) {
    const bool all =
        std::ranges::all_of(row.said_by, [kind](const auto& name) { return is_on(name, kind); });
    return all ? row.said_by : std::vector<std::string>{};
}

} // namespace

std::vector<FieldOfKind> fields_of(Kind kind) {
    std::vector<FieldOfKind> fields;
    for (const auto& row : rows) {
        if (std::ranges::find(row.on, kind) != row.on.end()) {
            fields.push_back({row.name, row.stays, said_by(row, kind)});
        }
    }
    return fields;
}

} // namespace thawslip::wording

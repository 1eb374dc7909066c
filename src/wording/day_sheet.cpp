#include "wording/day_sheet.h"

#include "base/list.h"
#include "kitchen/allergens/added_allergens.h"
#include "kitchen/foods/parts_ahead.h"
#include "kitchen/measures/unit_text.h"
#include "wording/cooling.h"
#include "wording/fields.h"
#include "wording/freezing_plan.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/room.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

using kitchen::IngredientDay;
using kitchen::Plan;
using kitchen::PlannedPackage;

/// A dish: a package, or one for each of its sizes.
using Sizes = std::span<const PlannedPackage>;

/// The dishes that one set of pages is for.
struct Station {
    std::string name; ///< empty: none
    std::vector<Sizes> dishes;
};

std::vector<Station> stations_of(const Plan& plan, SheetPer per) {
    std::vector<Station> stations;
    for (const auto& dish : kitchen::dishes_of(plan)) {
        const auto& name = dish.front().package.station;
        auto found = std::ranges::find(stations, name, &Station::name);
        const bool joins =
            per == SheetPer::Day ? !stations.empty() : !name.empty() && found != stations.end();
        if (!joins) {
            found = stations.insert(stations.end(), {per == SheetPer::Day ? "" : name, {}});
        } else if (per == SheetPer::Day) {
            found = stations.begin();
        }
        found->dishes.push_back(dish);
    }
    return stations;
}

/// The facts that there are, of those that may be empty.
Paragraph facts_line(std::vector<std::string> facts) {
    std::erase(facts, std::string{});
    return plain(joined(facts, " · "));
}

/// What is packed: "3 bags, each serves 6 · 2.2 kg (4 lb 14 oz) · 30 mm (1⅛ in) thick".
Paragraph size_facts(const PlannedPackage& planned, const Style& style) {
    const auto& package = planned.package;
    return facts_line(
        {style.say("day-sheet.serves",
                   {say_bag_count(planned.bags.size(), style), std::to_string(package.servings)}),
         package.container ? with_no_break_spaces(package.container->as_written) : "",
         package.weight ? say_weight(*package.weight, style) : "",
         package.thickness ? style.say("day-sheet.thick",
                                       {kitchen::thickness_text(*package.thickness, style.units)})
                           : ""});
}

/// What comes of it: "Freezes flat in 15 h · Best if used by 17 Dec 2026".
Paragraph time_facts(const PlannedPackage& planned, const Style& style) {
    return facts_line(
        {planned.freezing
             ? style.say("day-sheet.freezes", {say_duration(*planned.freezing, style.language)})
             : "",
         say_keep_until(planned.keep_until, style.language), say_in_freezer(planned, style)});
}

/// What is for one day, each with a box.
std::vector<Paragraph> ingredients_for(IngredientDay wanted, const PlannedPackage& planned,
                                       const Plan& plan, const Style& style) {
    std::vector<Paragraph> cells;
    for (const auto& ingredient : planned.package.ingredients) {
        if (day_of(ingredient, planned.package, plan.prepared) == wanted) {
            cells.push_back(ticked(plain(say_quantity(ingredient.add, style))));
        }
    }
    return cells;
}

/// Whether all of the dish is cooked on the day before.
bool is_made_before(const PlannedPackage& planned, const Plan& plan) {
    return plan.prepared && planned.package.made == plan.prepared;
}

std::vector<Paragraph> into_the_bags(const PlannedPackage& planned, const Plan& plan,
                                     const Style& style) {
    std::vector<Paragraph> cells;
    if (is_made_before(planned, plan)) {
        cells.push_back(ticked(plain(
            style.say("day-sheet.cooked-on", {say_weekday_date(*plan.prepared, style.language)}))));
    }
    for (const auto& ingredient : planned.package.ingredients) {
        const auto words = say_quantity(ingredient.add, style);
        switch (is_made_before(planned, plan) ? IngredientDay::CookDay : ingredient.day) {
        case IngredientDay::DayBefore:
            cells.push_back(ticked(labelled(style.say("day-sheet.prepared"), words)));
            break;
        case IngredientDay::PackingDay: cells.push_back(ticked(plain(words))); break;
        case IngredientDay::CookDay: break;
        }
    }
    return cells;
}

/// What is of a bag that serves so many, where a dish has bags of several sizes.
std::string of_size(std::string text, const PlannedPackage& planned, Sizes dish,
                    const Style& style) {
    return dish.size() == 1
               ? std::move(text)
               : style.say("day-sheet.of-size", {text, std::to_string(planned.package.servings)});
}

/// What stays out of one bag of each size, for it waits beside it; and what is bought for all bags.
std::vector<Paragraph> stays_out(Sizes dish, const Style& style) {
    std::vector<Paragraph> cells;
    for (const auto& planned : dish) {
        for (const auto& finish : planned.finish) {
            cells.push_back(
                ticked(labelled(say_when_head(finish.when, style.language),
                                of_size(say_addition(finish, style), planned, dish, style))));
        }
    }
    const bool one_bag = dish.size() == 1 && dish.front().bags.size() == 1;
    for (const auto& ingredient : dish.front().package.ingredients) {
        if (ingredient.day == IngredientDay::CookDay) {
            cells.push_back(ticked(
                labelled(style.say(one_bag ? "day-sheet.cook-day" : "day-sheet.cook-day-all"),
                         say_quantity(ingredient.add, style))));
        }
    }
    return cells;
}

/// A box for each bag, with its number.
Paragraph bag_boxes(const PlannedPackage& planned) {
    Paragraph boxes;
    for (const auto& bag : planned.bags) {
        boxes.boxes.push_back(std::to_string(bag.number));
    }
    return boxes;
}

/// The boxes of each size, below what it serves where there are several.
std::vector<Paragraph> all_boxes(Sizes dish, const Style& style) {
    std::vector<Paragraph> cells;
    for (const auto& planned : dish) {
        if (dish.size() > 1) {
            cells.push_back(
                plain(style.say("label.serves", {std::to_string(planned.package.servings)})));
        }
        cells.push_back(bag_boxes(planned));
    }
    return cells;
}

/// What goes in, what stays out, and the bags: each at its own place in every block, so that the
/// eye need not look for it. Of a dish that lists nothing the bags alone are said, in all the
/// width.
void add_columns(Field& field, Sizes dish, const Plan& plan, const Style& style) {
    std::vector<Column> columns = {
        {style.say("day-sheet.into"), into_the_bags(dish.front(), plan, style)},
        {style.say("day-sheet.out"), stays_out(dish, style)}};
    if (std::ranges::all_of(columns, [](const Column& column) { return column.cells.empty(); })) {
        field.paragraphs.push_back(plain(style.say("day-sheet.filled")));
        field.paragraphs.back().role = Role::ColumnHeads;
        std::ranges::move(all_boxes(dish, style), std::back_inserter(field.paragraphs));
        return;
    }
    columns.push_back({style.say("day-sheet.filled"), all_boxes(dish, style)});
    add_side_by_side(field, std::move(columns));
}

/// "Contains celery · May contain hazelnuts · Added on cook day milk", and where the bags go.
Paragraph people_facts(const PlannedPackage& planned, const Style& style) {
    const auto added =
        kitchen::added_allergens(planned.package, planned.allergens, *style.allergens);
    Paragraph line;
    const auto add = [&](const std::string& head, const std::string& words) {
        if (!words.empty()) {
            if (!line.spans.empty()) {
                line.spans.push_back({" · ", Emphasis::Plain});
            }
            line.spans.push_back({head + " ", Emphasis::Strong});
            line.spans.push_back({typeset_text(words), Emphasis::Plain});
        }
    };
    add(style.say("label.contains"), say_contains(planned.allergens, style));
    add(style.say("label.may-contain"), say_contains(planned.may_contain, style));
    add(style.say("door-list.added"), say_contains(added, style));
    add(style.say("day-sheet.place"), planned.package.place);
    return line;
}

void add_people(Field& field, const PlannedPackage& planned, const Style& style) {
    if (auto people = people_facts(planned, style); !people.spans.empty()) {
        field.paragraphs.push_back(std::move(people));
    }
}

/// What is to be minded of this dish while it is packed, and on no other day.
void add_packing_cautions(Field& field, const PlannedPackage& planned, const Style& style) {
    for (const auto& caution : planned.cautions) {
        if (caution.id == "rice-cool-fast") {
            field.paragraphs.push_back(
                plain(capitalised(say_caution(caution, style.language)) + "."));
        }
    }
}

/// Sizes of a dish contain the same, and mostly lie at one place: said once, it stands above them
/// all, for below the first it would seem to be of that one alone.
bool is_above_sizes(Sizes dish, const Style& style) {
    const auto first = people_facts(dish.front(), style);
    return dish.size() > 1 && std::ranges::all_of(dish, [&](const PlannedPackage& planned) {
               return people_facts(planned, style) == first;
           });
}

void add_dish(Field& field, Sizes dish, const Plan& plan, const Style& style) {
    field.paragraphs.push_back(heading(numbered(dish.front(), style)));
    const bool above = is_above_sizes(dish, style);
    if (above) {
        add_people(field, dish.front(), style);
    }
    for (const auto& planned : dish) {
        field.paragraphs.push_back(size_facts(planned, style));
        field.paragraphs.push_back(time_facts(planned, style));
        if (!above) {
            add_people(field, planned, style);
        }
        if (planned.cooling) {
            field.paragraphs.push_back(plain(say_cooling(*planned.cooling, style)));
        }
    }
    add_packing_cautions(field, dish.front(), style);
    add_columns(field, dish, plan, style);
}

/// A dish as the day before sees it: what is made ready then, in two columns.
void add_dish_before(Field& field, const PlannedPackage& planned, const Plan& plan,
                     const Style& style) {
    auto cells = ingredients_for(IngredientDay::DayBefore, planned, plan, style);
    const bool made_then = is_made_before(planned, plan);
    if (cells.empty() && !made_then) {
        return;
    }
    field.paragraphs.push_back(heading(numbered(planned, style)));
    add_people(field, planned, style);
    if (made_then) {
        field.paragraphs.push_back(plain(style.say("day-sheet.cook-today")));
    }
    if (cells.empty()) {
        return;
    }
    const auto half = static_cast<std::ptrdiff_t>((cells.size() + 1) / 2);
    std::vector<Paragraph> second(std::make_move_iterator(cells.begin() + half),
                                  std::make_move_iterator(cells.end()));
    cells.resize(static_cast<std::size_t>(half));
    add_side_by_side(
        field,
        {{style.say("day-sheet.prepare"), std::move(cells)}, {"", std::move(second)}, {"", {}}});
}

/// The title is the station, where there is one: it is looked for from afar.
Print sheet_of(const std::string& day, kitchen::Date date, const Station& station, const Plan& plan,
               const Style& style) {
    const auto when = say_weekday_date(date, style.language);
    return station.name.empty() ? new_sheet(day, when, plan.kitchen, style)
                                : new_sheet(station.name, style.say("day-sheet.on", {day, when}),
                                            plan.kitchen, style);
}

/// How what is made ready is chilled: what holds for the packing day, but for the freezer.
Field chilling_field(const Plan& plan, const Style& style) {
    Field field{field_name::freezing, {heading(style.say("day-sheet.chilling"))}, KeyPath{"day"}};
    field.paragraphs.push_back(plain(
        style.say("day-sheet.chill", {say_cold_limit(70, style), say_cold_limit(41, style)})));
    auto chilled = plan;
    std::erase_if(chilled.cautions, [](const kitchen::Caution& caution) {
        return caution.id == "freeze-in-one-layer";
    });
    add_day_cautions(field, chilled, style);
    return field;
}

void add_before(std::vector<Print>& sheets, const Station& station, const Plan& plan,
                const Style& style) {
    if (!plan.prepared) {
        return;
    }
    Field dishes{field_name::dishes, {}, KeyPath{"package"}};
    for (const auto& dish : station.dishes) {
        add_dish_before(dishes, dish.front(), plan, style);
    }
    if (dishes.paragraphs.empty()) {
        return;
    }
    auto sheet = sheet_of(say_before(plan, style), *plan.prepared, station, plan, style);
    sheet.fields.push_back(std::move(dishes));
    sheet.fields.push_back(chilling_field(plan, style));
    sheet.fields.push_back(local_rules_field(style));
    sheets.push_back(std::move(sheet));
}

Print packing_sheet(const Station& station, const Plan& plan, const Style& style) {
    auto sheet = sheet_of(style.say("day-sheet.title"), plan.made, station, plan, style);
    Field dishes{field_name::dishes, {}, KeyPath{"package"}};
    for (const auto& dish : station.dishes) {
        add_dish(dishes, dish, plan, style);
    }
    sheet.fields.push_back(std::move(dishes));
    return sheet;
}

/// What holds for all stations together, below the dishes of one page or on a page of its own.
void add_freezer(Print& sheet, const Plan& plan, const Style& style) {
    auto freezing = freezing_field(plan, style);
    add_room(freezing, plan, style);
    sheet.fields.push_back(std::move(freezing));
    sheet.fields.push_back(local_rules_field(style));
}

} // namespace

std::string say_before(const Plan& plan, const Style& style) {
    const auto days = kitchen::days_between(*plan.prepared, plan.made).count();
    return style.language.say_count("day-sheet.day-before", "day-sheet.days-before",
                                    static_cast<std::size_t>(days));
}

std::vector<Print> day_sheets(const Plan& plan, SheetPer per, const Style& style) {
    const auto stations = stations_of(plan, per);
    std::vector<Print> sheets;
    for (const auto& station : stations) {
        add_before(sheets, station, plan, style);
    }
    for (const auto& station : stations) {
        sheets.push_back(packing_sheet(station, plan, style));
        if (per == SheetPer::Station) {
            auto cooling = cooling_field(plan, style);
            sheets.back().fields.push_back(std::move(cooling));
            sheets.back().fields.push_back(local_rules_field(style));
        }
    }
    if (per == SheetPer::Station || sheets.empty()) {
        sheets.push_back(packing_sheet({}, plan, style));
    }
    add_freezer(sheets.back(), plan, style);
    return sheets;
}

} // namespace thawslip::wording

#include "wording/day_sheet.h"

#include "kitchen/allergens/added_allergens.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/shopping.h"
#include "wording/cooling.h"
#include "wording/fields.h"
#include "wording/freezing_plan.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/typography.h"

#include <algorithm>

namespace thawslip::wording {
namespace {

Paragraph ticked(Paragraph paragraph) {
    paragraph.marker = Marker::TickBox;
    return paragraph;
}

std::string joined(const std::vector<std::string>& parts, std::string_view mark) {
    std::string text;
    for (const auto& part : parts) {
        text += text.empty() || part.empty() ? "" : mark;
        text += part;
    }
    return text;
}

/// What is packed: "3 bags, each serves 6 · 2.2 kg (4 lb 14 oz) · 30 mm (1⅛ in) thick".
Paragraph size_facts(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto& package = planned.package;
    return plain(joined(
        {style.say("day-sheet.serves",
                   {say_bag_count(planned.bags.size(), style), std::to_string(package.servings)}),
         package.weight ? say_weight(*package.weight, style) : "",
         package.thickness ? style.say("day-sheet.thick",
                                       {kitchen::thickness_text(*package.thickness, style.units)})
                           : ""},
        " · "));
}

/// What comes of it: "Freezes flat in 15 h · Best if used by 17 Dec 2026".
Paragraph time_facts(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto& keep = planned.keep_until;
    return plain(joined(
        {planned.freezing
             ? style.say("day-sheet.freezes", {say_duration(*planned.freezing, style.language)})
             : "",
         with_no_break_spaces(say_keep_until_head(keep, style.language) + " " +
                              say_date(keep.date, style.language))},
        " · "));
}

std::vector<Paragraph> into_the_bags(const kitchen::Package& package, const Style& style) {
    std::vector<Paragraph> cells;
    for (const auto& ingredient : package.ingredients) {
        if (!ingredient.on_cook_day) {
            cells.push_back(ticked(plain(say_quantity(ingredient.add, style))));
        }
    }
    return cells;
}

std::vector<Paragraph> stays_out(const kitchen::PlannedPackage& planned, const Style& style) {
    std::vector<Paragraph> cells;
    for (const auto& finish : planned.finish) {
        cells.push_back(ticked(
            labelled(say_when_head(finish.when, style.language), say_addition(finish, style))));
    }
    for (const auto& ingredient : planned.package.ingredients) {
        if (ingredient.on_cook_day) {
            cells.push_back(ticked(
                labelled(style.say("day-sheet.cook-day"), say_quantity(ingredient.add, style))));
        }
    }
    return cells;
}

/// A list with what stands above it.
struct Column {
    std::string_view head;
    std::vector<Paragraph> cells;
};

bool is_empty(const Column& column) {
    return column.cells.empty();
}

/// Lists side by side, a row at a time, so that they may run on to another page.
void add_side_by_side(Field& field, std::vector<Column> columns, const Style& style) {
    Paragraph heads;
    heads.role = Role::ColumnHeads;
    std::size_t rows = 0;
    for (const auto& column : columns) {
        heads.cells.push_back(is_empty(column) ? Paragraph{} : plain(style.say(column.head)));
        rows = std::max(rows, column.cells.size());
    }
    field.paragraphs.push_back(std::move(heads));
    for (std::size_t i = 0; i < rows; ++i) {
        Paragraph row;
        for (auto& column : columns) {
            row.cells.push_back(i < column.cells.size() ? std::move(column.cells[i]) : Paragraph{});
        }
        field.paragraphs.push_back(std::move(row));
    }
}

/// A box for each bag, with its number.
Paragraph bag_boxes(const kitchen::PlannedPackage& planned) {
    Paragraph boxes;
    for (const auto& bag : planned.bags) {
        boxes.boxes.push_back(std::to_string(bag.number));
    }
    return boxes;
}

/// What goes in, what stays out, and the bags: each at its own place in every block, so that the
/// eye need not look for it. Of a dish that lists nothing the bags alone are said, in all the
/// width.
void add_columns(Field& field, const kitchen::PlannedPackage& planned, const Style& style) {
    std::vector<Column> columns = {{"day-sheet.into", into_the_bags(planned.package, style)},
                                   {"day-sheet.out", stays_out(planned, style)}};
    if (std::ranges::all_of(columns, is_empty)) {
        field.paragraphs.push_back(plain(style.say("day-sheet.filled")));
        field.paragraphs.back().role = Role::ColumnHeads;
        field.paragraphs.push_back(bag_boxes(planned));
        return;
    }
    columns.push_back({"day-sheet.filled", {bag_boxes(planned)}});
    add_side_by_side(field, std::move(columns), style);
}

/// A dish by its number of the day: "2 · RAW · Apple and sage pork".
std::string numbered(const kitchen::PlannedPackage& planned, const Style& style) {
    return std::to_string(planned.number) + " · " +
           say_dish(planned.package.dish, planned.raw, style.language);
}

/// "Contains celery · May contain hazelnuts · Added on cook day milk", and where the bags go.
Paragraph people_facts(const kitchen::PlannedPackage& planned, const Style& style) {
    const auto added =
        kitchen::added_allergens(planned.finish, planned.allergens, *style.allergens);
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

void add_dish(Field& field, const kitchen::PlannedPackage& planned, const Style& style) {
    auto heading = plain(numbered(planned, style));
    heading.role = Role::Heading;
    field.paragraphs.push_back(std::move(heading));
    field.paragraphs.push_back(size_facts(planned, style));
    field.paragraphs.push_back(time_facts(planned, style));
    if (auto people = people_facts(planned, style); !people.spans.empty()) {
        field.paragraphs.push_back(std::move(people));
    }
    if (planned.cooling) {
        field.paragraphs.push_back(plain(say_cooling(*planned.cooling, style)));
    }
    add_columns(field, planned, style);
}

/// The numbers of the dishes that something is for, as their labels have them.
std::string say_dishes(const kitchen::ShoppingItem& item, const kitchen::Plan& plan,
                       const Style& style) {
    std::vector<int> numbers;
    for (const int dish : item.dishes) {
        numbers.push_back(plan.packages[static_cast<std::size_t>(dish - 1)].number);
    }
    return say_numbers(std::move(numbers), style.language);
}

/// "6 × 400 g" and "tins white beans": of packs, how much is in each belongs to the amount.
kitchen::AmountAndItem to_buy(const kitchen::Quantity& total, const Style& style) {
    auto words = kitchen::amount_and_item(total, style.units);
    if (!words.amount.ends_with("×")) {
        return words;
    }
    const auto pack = kitchen::parse_quantity(words.item);
    if (!pack.ok() || !pack.value().low || pack.value().unit == kitchen::Unit::Count) {
        return words;
    }
    auto each = kitchen::amount_and_item(pack.value(), style.units);
    if (each.amount.empty() || each.item.empty()) {
        return words;
    }
    return {words.amount + " " + each.amount, each.item};
}

Paragraph shopping_row(const kitchen::ShoppingItem& item, const kitchen::Plan& plan,
                       const Style& style) {
    const auto [amount, what] = to_buy(item.total, style);
    Paragraph row;
    auto thing = ticked(plain(what));
    thing.spans.front().emphasis = Emphasis::Strong;
    row.cells = {std::move(thing), plain(amount), as_is(say_dishes(item, plan, style))};
    return row;
}

void add_shopping(Field& field, std::string_view head,
                  const std::vector<kitchen::ShoppingItem>& items, const kitchen::Plan& plan,
                  const Style& style) {
    if (items.empty()) {
        return;
    }
    auto heading = plain(style.say(head));
    heading.role = Role::Heading;
    field.paragraphs.push_back(std::move(heading));
    for (const auto& item : items) {
        field.paragraphs.push_back(shopping_row(item, plan, style));
    }
}

/// Which dish each number is, for whoever has the list without the day sheet.
Field dish_numbers_field(const kitchen::Plan& plan, const Style& style) {
    auto heading = plain(style.say("shopping.dishes"));
    heading.role = Role::Heading;
    Field field{field_name::dish_numbers, {std::move(heading)}, KeyPath{"package"}};
    for (const auto& planned : plan.packages) {
        auto line = plain(planned.package.dish);
        line.marker = Marker::Number;
        line.number = planned.number;
        field.paragraphs.push_back(std::move(line));
    }
    return field;
}

Print sheet(const kitchen::Plan& plan, std::string_view title, const Style& style) {
    Print print;
    print.kind = Kind::DaySheet;
    print.dish = style.say(title);
    print.page_phrase = style.say("list.page");
    print.continued_phrase = style.say("list.continued");
    print.where = KeyPath{"day"};
    auto date = as_is(with_no_break_spaces(say_date(plan.made, style.language)), Emphasis::Strong);
    print.fields = {{field_name::title, {plain(print.dish)}, {}},
                    {field_name::date, {std::move(date)}, KeyPath{"day.made"}},
                    kitchen_field(plan.kitchen, style)};
    return print;
}

} // namespace

Print day_sheet(const kitchen::Plan& plan, const Style& style) {
    auto print = sheet(plan, "day-sheet.title", style);
    Field dishes{field_name::dishes, {}, KeyPath{"package"}};
    for (const auto& planned : plan.packages) {
        add_dish(dishes, planned, style);
    }
    print.fields.push_back(std::move(dishes));
    print.fields.push_back(freezing_field(plan, style));
    print.fields.push_back(local_rules_field(style));
    return print;
}

Print shopping_sheet(const kitchen::Plan& plan, const Style& style) {
    auto print = sheet(plan, "shopping.title", style);
    std::vector<kitchen::Package> packages;
    for (const auto& planned : plan.packages) {
        packages.push_back(planned.package);
    }
    const auto list = kitchen::shopping(packages, style.units.measures);
    Field field{field_name::shopping, {}, KeyPath{"package"}};
    add_shopping(field, "shopping.for-packing-day", list.for_the_day, plan, style);
    add_shopping(field, "shopping.for-cook-day", list.for_cook_day, plan, style);
    if (!field.paragraphs.empty()) {
        print.fields.push_back(dish_numbers_field(plan, style));
    }
    print.fields.push_back(std::move(field));
    return print;
}

} // namespace thawslip::wording

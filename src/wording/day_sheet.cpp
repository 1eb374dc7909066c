#include "wording/day_sheet.h"

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
        cells.push_back(ticked(labelled(capitalised(say_when(finish.when, style.language)),
                                        say_addition(finish, style))));
    }
    for (const auto& ingredient : planned.package.ingredients) {
        if (ingredient.on_cook_day) {
            cells.push_back(ticked(
                labelled(style.say("day-sheet.cook-day"), say_quantity(ingredient.add, style))));
        }
    }
    return cells;
}

/// A list with what stands above it; empty ones are not shown.
struct Column {
    std::string_view head;
    std::vector<Paragraph> cells;
};

/// Lists side by side, a row at a time, so that they may run on to another page.
void add_side_by_side(Field& field, std::vector<Column> columns, const Style& style) {
    std::erase_if(columns, [](const Column& column) { return column.cells.empty(); });
    if (columns.empty()) {
        return;
    }
    Paragraph heads;
    heads.role = Role::ColumnHeads;
    std::size_t rows = 0;
    for (const auto& column : columns) {
        heads.cells.push_back(plain(style.say(column.head)));
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

/// A box for the labels, with the ids as far as there are few of them.
Paragraph labels_line(const kitchen::PlannedPackage& planned, const Style& style) {
    constexpr std::size_t most_listed = 8;
    std::string ids;
    for (const auto& bag : planned.bags) {
        ids += (ids.empty() ? "" : ", ") + unbroken(bag.id);
    }
    Paragraph line;
    line.marker = Marker::TickBox;
    line.spans.push_back({style.say("day-sheet.labelled"), Emphasis::Plain});
    if (planned.bags.size() <= most_listed) {
        line.spans.push_back({" " + ids, Emphasis::Plain});
    }
    return line;
}

void add_dish(Field& field, const kitchen::PlannedPackage& planned, const Style& style) {
    auto heading = plain(say_dish(planned.package.dish, planned.raw, style.language));
    heading.role = Role::Heading;
    field.paragraphs.push_back(std::move(heading));
    field.paragraphs.push_back(size_facts(planned, style));
    field.paragraphs.push_back(time_facts(planned, style));
    if (planned.cooling) {
        field.paragraphs.push_back(plain(say_cooling(*planned.cooling, style)));
    }
    add_side_by_side(field,
                     {{"day-sheet.into", into_the_bags(planned.package, style)},
                      {"day-sheet.out", stays_out(planned, style)}},
                     style);
    field.paragraphs.push_back(labels_line(planned, style));
}

Paragraph shopping_row(const kitchen::ShoppingItem& item, const Style& style) {
    const auto [amount, what] = kitchen::amount_and_item(item.total, style.units);
    Paragraph row;
    row.cells = {ticked(plain(amount)), plain(what), plain(joined(item.dishes, ", "))};
    return row;
}

void add_shopping(Field& field, std::string_view head,
                  const std::vector<kitchen::ShoppingItem>& items, const Style& style) {
    if (items.empty()) {
        return;
    }
    auto heading = plain(style.say(head));
    heading.role = Role::Heading;
    field.paragraphs.push_back(std::move(heading));
    for (const auto& item : items) {
        field.paragraphs.push_back(shopping_row(item, style));
    }
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
    add_shopping(field, "shopping.for-the-day", list.for_the_day, style);
    add_shopping(field, "shopping.for-cook-day", list.for_cook_day, style);
    print.fields.push_back(std::move(field));
    return print;
}

} // namespace thawslip::wording

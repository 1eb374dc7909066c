#include "wording/shopping_sheet.h"

#include "base/list.h"
#include "kitchen/foods/parts_ahead.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/measures/units.h"
#include "kitchen/shopping.h"
#include "wording/day_sheet.h"
#include "wording/list_parts.h"
#include "wording/phrases.h"
#include "wording/print_fields.h"
#include "wording/room.h"
#include "wording/typography.h"

#include <algorithm>
#include <cmath>
#include <map>
#include <numeric>

namespace thawslip::wording {
namespace {

using kitchen::Amount;
using kitchen::Plan;

/// A dish of one of the days.
struct DishOfDay {
    std::size_t day = 0;
    int number = 1; ///< of that day, as its labels have it
};

/// All dishes in the order in which they are added up.
struct Dishes {
    std::vector<kitchen::Package> packages;
    std::vector<DishOfDay> of; ///< each of `packages`
    bool several_days = false;
};

Dishes dishes_of(std::span<const Plan> plans) {
    Dishes dishes;
    dishes.several_days = plans.size() > 1;
    for (std::size_t day = 0; day < plans.size(); ++day) {
        for (const auto& planned : plans[day].packages) {
            auto package = planned.package;
            for (auto& ingredient : package.ingredients) {
                ingredient.day = day_of(ingredient, planned.package, plans[day].prepared);
            }
            dishes.packages.push_back(std::move(package));
            dishes.of.push_back({day, planned.number});
        }
    }
    return dishes;
}

/// "A" to "Z", then "AA".
std::string letter_of(std::size_t day) {
    constexpr std::size_t letters = 26;
    const std::string last(1, static_cast<char>('A' + day % letters));
    return day < letters ? last : letter_of(day / letters - 1) + last;
}

/// The numbers of the dishes that something is for, as their labels have them: "1, 3"; of several
/// days "A1, 3; B2".
std::string say_dishes(const kitchen::ShoppingItem& item, const Dishes& dishes,
                       const Style& style) {
    std::map<std::size_t, std::vector<int>> numbers;
    for (const int dish : item.dishes) {
        const auto& of = dishes.of[static_cast<std::size_t>(dish - 1)];
        numbers[of.day].push_back(of.number);
    }
    std::string text;
    for (auto& [day, of_day] : numbers) {
        of_day.erase(std::unique(of_day.begin(), of_day.end()), // sizes of one dish stand together
                     of_day.end());
        text += (text.empty() ? "" : "; ") + (dishes.several_days ? letter_of(day) : "") +
                say_numbers(std::move(of_day), style.language);
    }
    return text;
}

/// "6 × 400 g" and "tins white beans": of packs, how much is in each belongs to the amount.
/// \param exact what was rounded to `total`
kitchen::AmountAndItem to_buy(const kitchen::Quantity& total, const kitchen::Quantity& exact,
                              const Style& style) {
    auto words = kitchen::amount_and_item(total, exact, style.units);
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

/// "arroz" of "de arroz", as the item of "200 g de arroz" is kept.
std::string without_joint(const std::string& item) {
    constexpr std::string_view joint = "de ";
    return item.starts_with(joint) ? item.substr(joint.size()) : item;
}

/// The least multiple of `1/parts` that is as much, or short of it by a hair that nobody measures:
/// half a cup and 120 ml are a cup. Where the parts are hardly more than that, as much.
Amount rounded_up(Amount amount, std::int64_t parts) {
    constexpr double hair = 0.02;
    const double exact = amount.value() * static_cast<double>(parts);
    const auto enough = (amount.numerator * parts + amount.denominator - 1) / amount.denominator;
    const auto nearly = static_cast<std::int64_t>(std::ceil(exact / (1.0 + hair)));
    const auto count = exact * hair < 0.5 ? std::min(enough, nearly) : enough;
    const auto common = std::gcd(count, parts);
    return {count / common, parts / common};
}

/// Whether lists say an amount as it is: metric in decimals, others in kitchen fractions.
bool is_said(Amount sum, kitchen::Unit unit) {
    constexpr std::int64_t fractions[] = {1, 2, 3, 4, 8};
    return kitchen::is_metric(unit) ? 100 % sum.denominator == 0
                                    : contains(fractions, sum.denominator);
}

/// In what parts of a unit more is bought than needed: pounds by the ounce, cups as sets have them.
std::vector<std::int64_t> parts_bought(Amount sum, kitchen::Unit unit) {
    using kitchen::Unit;
    if (unit == Unit::Count || unit == Unit::Pound) {
        return {unit == Unit::Count ? 1 : 16};
    }
    if (unit == Unit::Kilogram || unit == Unit::Litre) {
        return {100};
    }
    if (sum.value() >= 10) {
        return {1};
    }
    return unit == Unit::Cup ? std::vector<std::int64_t>{4, 3, 8} : std::vector<std::int64_t>{4};
}

/// Things are bought whole. Sums of several units come to figures that nobody measures, 0.583 cup,
/// and are rounded up.
Amount as_bought(Amount sum, kitchen::Unit unit) {
    const bool is_thing = unit == kitchen::Unit::Count;
    if (!is_thing && is_said(sum, unit)) {
        return sum;
    }
    const auto parts = parts_bought(sum, unit);
    auto least = rounded_up(sum, parts.front());
    for (const auto each : parts) {
        const auto rounded = rounded_up(sum, each);
        least = rounded.value() < least.value() ? rounded : least;
    }
    return least;
}

/// A sum is bought whole, and called as many: what was written stays as it is.
kitchen::Quantity in_its_number(const kitchen::Quantity& total, const Goods& goods,
                                const Style& style) {
    auto named = total;
    if (!total.as_written.empty() || !total.low) {
        return named;
    }
    named.low = as_bought(*total.low, total.unit);
    named.high = as_bought(*total.high, total.unit);
    named.item = in_number(goods, named, style);
    return named;
}

/// What is looked for in the shop stands first: "2 bunches" and "sage" of "2" and "bunches sage";
/// of packs "white beans (tins)".
kitchen::AmountAndItem thing_first(const kitchen::Quantity& total,
                                   const kitchen::AmountAndItem& words, const Goods& goods) {
    const auto parts = total.unit == kitchen::Unit::Count && !words.amount.empty()
                           ? measured_thing(goods, words.item)
                           : std::nullopt;
    if (!parts) {
        return {words.amount, without_joint(words.item)};
    }
    if (words.amount.find("×") != std::string::npos) {
        return {words.amount, parts->thing + " (" + parts->measure + ")"};
    }
    return {words.amount + " " + parts->measure, parts->thing};
}

/// Whether numbers of dishes would take the room of the things in a column of their own, where they
/// stand on one line: they stand below the thing then.
bool is_long(const std::string& numbers) {
    constexpr std::size_t bytes_in_column = 12;
    return numbers.size() > bytes_in_column;
}

Paragraph row_of(const kitchen::ShoppingItem& item, const Dishes& dishes, const Goods& goods,
                 const Style& style) {
    const auto [amount, what] = thing_first(
        item.total, to_buy(in_its_number(item.total, goods, style), item.total, style), goods);
    Paragraph row;
    auto thing = ticked(plain(what));
    thing.spans.front().emphasis = Emphasis::Strong;
    const auto of_dishes = say_dishes(item, dishes, style);
    const auto numbers =
        dishes.several_days ? of_dishes : style.say("shopping.dish-number", {of_dishes});
    if (is_long(of_dishes)) {
        row.cells = {std::move(thing), plain(amount), {}};
        row.below = {as_is(numbers)};
    } else {
        row.cells = {std::move(thing), plain(amount),
                     as_is(dishes.several_days ? numbers : with_no_break_spaces(numbers))};
    }
    return row;
}

/// What is bought, by its kind; what no word is known of comes last.
using ByKind = std::map<std::size_t, std::vector<kitchen::ShoppingItem>>;

ByKind by_kind(const std::vector<kitchen::ShoppingItem>& items, const Goods& goods) {
    ByKind kinds;
    for (const auto& item : items) {
        const auto thing = without_joint(item.total.item);
        if (is_bought(goods, thing)) {
            kinds[kind_of(goods, thing).value_or(goods.kinds.size())].push_back(item);
        }
    }
    return kinds;
}

/// In all the width of a strip.
Paragraph kind_head(std::size_t kind, const Goods& goods, const Style& style) {
    const bool is_known = kind < goods.kinds.size();
    auto head = plain(say_kind(goods, is_known ? std::optional{kind} : std::nullopt, style));
    head.role = Role::ColumnHeads;
    return head;
}

void add_section(Field& field, const std::string& head,
                 const std::vector<kitchen::ShoppingItem>& items, const Dishes& dishes,
                 const Goods& goods, const Style& style) {
    const auto kinds = by_kind(items, goods);
    if (kinds.empty()) {
        return;
    }
    field.paragraphs.push_back(heading(head));
    for (const auto& [kind, of_kind] : kinds) {
        field.paragraphs.push_back(kind_head(kind, goods, style));
        for (const auto& item : of_kind) {
            field.paragraphs.push_back(row_of(item, dishes, goods, style));
        }
    }
}

/// "The day before, Fri 16 Oct 2026"; of several days no date, for they differ.
std::string before_head(std::span<const Plan> plans, const Style& style) {
    if (plans.size() != 1) {
        return style.say("shopping.for-before");
    }
    return say_before(plans.front(), style) + ", " +
           say_weekday_date(*plans.front().prepared, style.language);
}

/// Which dish each number is, for whoever has the list without the day sheet, and what the freezer
/// has of it.
Field dish_numbers_field(std::span<const Plan> plans, const Style& style) {
    Field field{
        field_name::dish_numbers, {heading(style.say("shopping.dishes"))}, KeyPath{"package"}};
    for (std::size_t day = 0; day < plans.size(); ++day) {
        if (plans.size() > 1) {
            field.paragraphs.push_back(
                as_is(letter_of(day) + " · " + say_weekday_date(plans[day].made, style.language),
                      Emphasis::Strong));
        }
        for (const auto& sizes : kitchen::dishes_of(plans[day])) {
            const auto& planned = sizes.front();
            auto line = plain(planned.package.dish);
            line.marker = Marker::Number;
            line.number = planned.number;
            if (planned.in_freezer > 0) {
                line.below = {plain(say_in_freezer(planned, style))};
            }
            field.paragraphs.push_back(std::move(line));
        }
    }
    return field;
}

std::string dates_of(std::span<const Plan> plans, const Style& style) {
    std::string text;
    for (const auto& plan : plans) {
        const auto date = say_weekday_date(plan.made, style.language);
        text += text.find(date) != std::string::npos ? "" : (text.empty() ? "" : ", ") + date;
    }
    return text;
}

} // namespace

Print shopping_sheet(std::span<const Plan> plans, const Goods& goods, const Style& style) {
    const bool one_kitchen = std::ranges::all_of(
        plans, [&](const Plan& plan) { return plan.kitchen == plans.front().kitchen; });
    auto print = new_sheet(style.say("shopping.title"), dates_of(plans, style),
                           one_kitchen && !plans.empty() ? plans.front().kitchen : "", style);
    const auto dishes = dishes_of(plans);
    const auto list = kitchen::shopping(dishes.packages, style.units.measures);
    Field field{field_name::shopping, {}, KeyPath{"package"}};
    if (!list.for_day_before.empty()) {
        add_section(field, before_head(plans, style), list.for_day_before, dishes, goods, style);
    }
    add_section(field, style.say("shopping.for-packing-day"), list.for_the_day, dishes, goods,
                style);
    add_section(field, style.say("shopping.for-cook-day"), list.for_cook_day, dishes, goods, style);
    if (!field.paragraphs.empty()) {
        print.fields.push_back(dish_numbers_field(plans, style));
    }
    print.fields.push_back(std::move(field));
    return print;
}

} // namespace thawslip::wording

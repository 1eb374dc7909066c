#include "kitchen/shopping.h"

#include "base/list.h"
#include "kitchen/measures/units.h"
#include "kitchen/texts/inflection.h"
#include "kitchen/texts/lexicon.h"

#include <algorithm>
#include <map>
#include <optional>
#include <string>
#include <utility>

namespace thawslip::kitchen {
namespace {

/// A word as it is compared: English and Spanish in the singular, and German without the n of
/// "Dosen", "Zwiebeln" and "Eiern". Few other words end so, and they lose it alike.
std::string number_apart(const std::string& word) {
    auto text = singular(word);
    const bool ends_german = text.ends_with("en") || text.ends_with("eln") || text.ends_with("ern");
    if (ends_german && text.size() > 4) {
        text.pop_back();
    }
    return text;
}

/// The item as far as two lines may be told apart by it: words in the singular, and figures, which
/// tell tins, flours and milks apart. A list asks for them far more often than it has lines.
std::string item_key(const Quantity& quantity) {
    std::string key;
    for (const auto& word : worded(quantity.item).words) {
        key += number_apart(word) + " ";
    }
    return key;
}

/// A line of the list, and the key of its item.
struct Line {
    ShoppingItem item;
    std::string key;
};

/// Whether two amounts of one item may be added up.
bool may_be_added(const Quantity& a, const Quantity& b) {
    const bool measured = a.low && a.high && b.low && b.high;
    return measured && a.qualifier.empty() && b.qualifier.empty() &&
           dimension(a.unit) == dimension(b.unit) && !a.item.empty();
}

std::optional<Amount> sum(Amount a, Amount b) {
    std::int64_t left = 0;
    std::int64_t right = 0;
    std::int64_t over = 0;
    std::int64_t under = 0;
    if (__builtin_mul_overflow(a.numerator, b.denominator, &left) ||
        __builtin_mul_overflow(b.numerator, a.denominator, &right) ||
        __builtin_add_overflow(left, right, &over) ||
        __builtin_mul_overflow(a.denominator, b.denominator, &under)) {
        return std::nullopt;
    }
    return in_lowest_terms({over, under});
}

/// `a` and `b` in the unit of `a`; nothing where they may not be added.
std::optional<Quantity> added(const Quantity& a, const Quantity& b, Measures measures) {
    if (!may_be_added(a, b)) {
        return std::nullopt;
    }
    const auto low = convert(*b.low, b.unit, a.unit, measures);
    const auto high = convert(*b.high, b.unit, a.unit, measures);
    if (!low || !high) {
        return std::nullopt;
    }
    auto total = a;
    total.low = sum(*a.low, *low);
    total.high = sum(*a.high, *high);
    total.as_written.clear();
    return total.low && total.high ? std::optional{total} : std::nullopt;
}

void add(std::vector<Line>& lines, const Line& one, Measures measures) {
    const auto& [more, key] = one;
    for (auto& line : lines) {
        if (line.key != key) {
            continue;
        }
        auto total = added(line.item.total, more.total, measures);
        if (total) {
            line.item.total = std::move(*total);
        }
        if (total || (line.item.total == more.total && !more.total.low)) { // "salt to taste", twice
            add_once(line.item.dishes, more.dishes.front());
            return;
        }
    }
    lines.push_back(one);
}

Line line_of(const Quantity& quantity, int dish) {
    return {{quantity, {dish}}, item_key(quantity)};
}

/// What is bought for one bag on cook day: what is added to it, and what is eaten with it.
std::vector<Line> lines_of_bag(const Package& package, int dish) {
    auto lines =
        mapped(package.finish, [dish](const Finish& finish) { return line_of(finish.add, dish); });
    for (const auto& side : package.sides) {
        lines.push_back(line_of(side.add, dish));
    }
    return lines;
}

std::vector<ShoppingItem> items_of(std::vector<Line> lines) {
    return mapped(lines, [](Line& line) { return std::move(line.item); });
}

} // namespace

ShoppingList shopping(std::span<const Package> packages, Measures measures) {
    const std::vector<Ingredient> no_more; // said of a dish as a whole, by its first size
    std::map<IngredientDay, std::vector<Line>> lines;
    for (int dish = 1; std::cmp_less_equal(dish, packages.size()); ++dish) {
        const auto& package = packages[static_cast<std::size_t>(dish - 1)];
        for (const auto& ingredient : goes_on(package) ? no_more : package.ingredients) {
            add(lines[ingredient.day], line_of(ingredient.add, dish), measures);
        }
        for (const auto& line : lines_of_bag(package, dish)) {
            for (int bag = 0; bag < package.bags; ++bag) {
                add(lines[IngredientDay::CookDay], line, measures);
            }
        }
    }
    return {items_of(std::move(lines[IngredientDay::DayBefore])),
            items_of(std::move(lines[IngredientDay::PackingDay])),
            items_of(std::move(lines[IngredientDay::CookDay]))};
}

} // namespace thawslip::kitchen

#include "kitchen/shopping.h"

#include "kitchen/inflection.h"
#include "kitchen/text.h"
#include "kitchen/units.h"

#include <algorithm>
#include <optional>

namespace thawslip::kitchen {
namespace {

/// The item as far as two lines may be told apart by it: words in the singular.
std::vector<std::string> item_key(const Quantity& quantity) {
    auto words = words_of(quantity.item);
    for (auto& word : words) {
        word = singular(word);
    }
    return words;
}

bool may_be_added(const Quantity& a, const Quantity& b) {
    const bool measured = a.low && a.high && b.low && b.high;
    return measured && a.qualifier.empty() && b.qualifier.empty() &&
           dimension(a.unit) == dimension(b.unit) && !a.item.empty() && item_key(a) == item_key(b);
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

void note_dish(ShoppingItem& line, const std::string& dish) {
    if (std::ranges::find(line.dishes, dish) == line.dishes.end()) {
        line.dishes.push_back(dish);
    }
}

void add(std::vector<ShoppingItem>& lines, const Quantity& quantity, const std::string& dish,
         Measures measures) {
    for (auto& line : lines) {
        if (auto total = added(line.total, quantity, measures)) {
            line.total = std::move(*total);
            note_dish(line, dish);
            return;
        }
        if (line.total == quantity && !quantity.low) { // "salt to taste", twice
            note_dish(line, dish);
            return;
        }
    }
    lines.push_back({quantity, {dish}});
}

} // namespace

ShoppingList shopping(std::span<const Package> packages, Measures measures) {
    ShoppingList list;
    for (const auto& package : packages) {
        for (const auto& ingredient : package.ingredients) {
            add(ingredient.on_cook_day ? list.for_cook_day : list.for_the_day, ingredient.add,
                package.dish, measures);
        }
        for (const auto& finish : package.finish) {
            for (int bag = 0; bag < package.bags; ++bag) {
                add(list.for_cook_day, finish.add, package.dish, measures);
            }
        }
    }
    return list;
}

} // namespace thawslip::kitchen

#include "kitchen/foods/parts_ahead.h"

#include "base/list.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

/// Asked as if it were a dish: stock and sauce are one of their own until they are packed.
FoodChoice kinds_of(const StorageTable& table, const std::string& text) {
    Package alone;
    alone.dish = text;
    FoodChoice kinds;
    for (const auto& named : foods_in_bag(table, alone)) {
        add_kinds(kinds, {named.kinds});
    }
    return kinds;
}

/// Whether a text names something, and nothing that is cooked.
bool is_known_uncooked(const StorageTable& table, const std::string& text) {
    const auto matches = match_foods(table.words, words_of(text));
    const auto is_cooked = [](const FoodMatch& match) {
        return match.word != nullptr && match.word->role == FoodRole::State &&
               state_named(match.word->means) != FoodState::Raw;
    };
    return std::ranges::any_of(matches,
                               [](const FoodMatch& match) { return match.word != nullptr; }) &&
           std::ranges::none_of(matches, is_cooked);
}

} // namespace

std::vector<PartAhead> parts_ahead(const StorageTable& table, const Package& package) {
    std::vector<PartAhead> parts;
    for (const auto& ingredient : package.ingredients) {
        if (ingredient.day != IngredientDay::DayBefore) {
            continue;
        }
        const auto& text = ingredient.add.item;
        auto kinds = kinds_of(table, text);
        if (!kinds.empty() || !is_known_uncooked(table, text)) {
            parts.push_back({&ingredient, std::move(kinds)});
        }
    }
    return parts;
}

IngredientDay day_of(const Ingredient& ingredient, const Package& package,
                     std::optional<Date> prepared) {
    const bool made_ahead = prepared && package.made == prepared;
    return made_ahead && ingredient.day == IngredientDay::PackingDay ? IngredientDay::DayBefore
                                                                     : ingredient.day;
}

Package with_days_ahead(const Package& package, const Day& day, const StorageTable& table) {
    auto counted = package;
    const bool is_ahead =
        day.prepared && (package.made == day.prepared || !parts_ahead(table, package).empty());
    if (is_ahead) {
        const auto days = days_between(*day.prepared, day.made).count();
        counted.days_refrigerated = std::max(counted.days_refrigerated, static_cast<int>(days));
    }
    return counted;
}

} // namespace thawslip::kitchen

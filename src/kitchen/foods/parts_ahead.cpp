#include "kitchen/foods/parts_ahead.h"

#include "base/list.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <optional>

namespace thawslip::kitchen {
namespace {

using Matches = std::vector<FoodMatch>;

template <class Is>
bool any_word(const Matches& matches, const Is& is) {
    return std::ranges::any_of(
        matches, [&](const FoodMatch& match) { return match.word != nullptr && is(*match.word); });
}

bool is_plant(const FoodWord& word) {
    return word.role == FoodRole::Base && !is_animal(word.means);
}

/// What may spoil: an animal, or a dish that is cooked.
bool may_spoil(const FoodWord& word) {
    return word.role == FoodRole::Kind || word.role == FoodRole::Question ||
           (word.role == FoodRole::Base && is_animal(word.means));
}

bool says_cooked(const FoodWord& word) {
    return word.role == FoodRole::State && state_named(word.means) == FoodState::Cooked;
}

/// Onions that are "picadas" or "gehackt" are no minced meat.
bool are_plants(const Matches& matches) {
    return any_word(matches, is_plant) && !any_word(matches, may_spoil);
}

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

/// The part, where it counts as chilled food.
std::optional<PartAhead> part_of(const StorageTable& table, const Ingredient& ingredient) {
    const auto& text = ingredient.add.item;
    const auto matches = match_foods(table.words, words_of(text));
    const bool is_known = any_word(matches, [](const FoodWord&) { return true; });
    auto kinds = are_plants(matches) ? FoodChoice{} : kinds_of(table, text);
    const bool counts = !kinds.empty() || !is_known || any_word(matches, says_cooked);
    return counts ? std::optional{PartAhead{&ingredient, std::move(kinds)}} : std::nullopt;
}

} // namespace

std::vector<PartAhead> parts_ahead(const StorageTable& table, const Package& package) {
    std::vector<PartAhead> parts;
    for (const auto& ingredient : package.ingredients) {
        if (ingredient.day == IngredientDay::DayBefore) {
            if (auto part = part_of(table, ingredient)) {
                parts.push_back(std::move(*part));
            }
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

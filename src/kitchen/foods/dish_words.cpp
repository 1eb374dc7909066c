#include "kitchen/foods/dish_words.h"

#include "kitchen/texts/free_texts.h"
#include "kitchen/texts/negation.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

bool is_dish(FreeText field) {
    return field == FreeText::Dish;
}

bool is_in_bag(FreeText field) {
    return is_dish(field) || field == FreeText::Ingredient;
}

bool may_say_filled(FreeText field) {
    return is_in_bag(field) || field == FreeText::Note;
}

/// The mentions of a meaning that nothing near denies.
bool names(const WordedText& text, std::string_view meaning) {
    const auto all = mentions(text, Section::Dish, meaning);
    for (std::size_t i = 0; i < all.size(); ++i) {
        if (!is_denied(text, all, i) && !is_warned_of(text, all, i, {})) {
            return true;
        }
    }
    return false;
}

/// "With a prune filling"; "filling" alone may be one for a pie.
bool names_filling(const WordedText& text) {
    const auto with = mentions(text, Section::Dish, "with");
    return !with.empty() && names(text, "filling") &&
           mentions(text, Section::Dish, "filling").front().first > with.front().first;
}

std::optional<Filled> filled_by(const ReadText& read) {
    if (says(read.text, Section::Dish, "apart")) {
        return std::nullopt;
    }
    const bool stuffed = names(read.text, "stuffed") || names_filling(read.text);
    if (!stuffed && (read.field == FreeText::Note || !names(read.text, "wrapped"))) {
        return std::nullopt;
    }
    return Filled{stuffed, read.written, read.where};
}

bool any_names(const Package& package, Wanted wanted, std::string_view meaning) {
    return std::ranges::any_of(free_texts(package, wanted),
                               [&](const ReadText& read) { return names(read.text, meaning); });
}

} // namespace

std::optional<Filled> filled_in(const Package& package) {
    std::optional<Filled> found;
    for (const auto& read : free_texts(package, may_say_filled)) {
        auto filled = filled_by(read);
        if (filled && (!found || (filled->stuffed && !found->stuffed))) {
            found = std::move(filled);
        }
    }
    return found;
}

bool names_soup(const Package& package) {
    return any_names(package, is_dish, "soup");
}

bool names_rice(const Package& package) {
    return any_names(package, is_in_bag, "rice");
}

std::vector<std::string> foods_kept_chilled(const StorageTable& table, const Package& package) {
    auto foods = package.food;
    if (!foods.empty() && !any_raw(table, foods) && names_rice(package)) {
        foods.emplace_back("cooked rice");
    }
    return foods;
}

} // namespace thawslip::kitchen

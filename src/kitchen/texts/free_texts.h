#pragma once

#include "base/key_path.h"
#include "kitchen/day.h"
#include "kitchen/texts/lexicon.h"

#include <string>
#include <vector>

namespace thawslip::kitchen {

/// Where the cook writes words of their own.
enum class FreeText {
    Dish,
    Ingredient,
    CookDayIngredient,
    Finish,
    FinishBag,
    Note,
    ThawNote,
    CookIn,
    CookSetting,
    Step,
};

/// One text of a package, cut into words once for all rules that look at it.
struct ReadText {
    FreeText field = FreeText::Dish;
    std::string written;
    WordedText text;
    KeyPath where;
    std::vector<WordedText> sentences = {}; ///< of words that name no food
};

/// Which fields to read: cutting texts into words is most of the work of looking at them.
using Wanted = bool (*)(FreeText field);

/// The free words of a package's `wanted` fields that are not empty, in the order of `FreeText`;
/// of all fields where none are named.
std::vector<ReadText> free_texts(const Package& package, Wanted wanted = nullptr);

/// What names food: the dish, its ingredients, what is added on cook day.
bool names_food(FreeText field);

} // namespace thawslip::kitchen

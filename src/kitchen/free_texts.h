#pragma once

#include "base/key_path.h"
#include "kitchen/day.h"
#include "kitchen/lexicon.h"

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
};

/// All free words of a package that are not empty, in the order of `FreeText`.
std::vector<ReadText> free_texts(const Package& package);

/// What names food: the dish, its ingredients, what is added on cook day.
bool names_food(FreeText field);

} // namespace thawslip::kitchen

#pragma once

#include "base/diagnostic.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/storage/storage.h"
#include "toml/document.h"

#include <string>
#include <vector>

namespace thawslip::intake {

/// A word of food_words/*.toml with texts of its own; see kitchen::FoodWord.
struct OwnFoodWord {
    std::string key;
    kitchen::FoodRole role = kitchen::FoodRole::SaysNothing;
    std::string means;
    std::string written;
    std::string language;
    bool in_compounds = false;
    friend auto operator<=>(const OwnFoodWord&, const OwnFoodWord&) = default;
};

/// Reads the words of one language. Faults, among them a kind that `table` does not have and a
/// word that stands twice and means two things, are appended to `faults`, placed.
std::vector<OwnFoodWord> read_food_words(const toml::Document& document,
                                         const std::string& language,
                                         const kitchen::StorageTable& table, Diagnostics& faults);

} // namespace thawslip::intake

#pragma once

#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/foods/food_catalogue.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/storage/storage.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::service {

/// All that is known of one kind of food.
struct FoodFacts {
    std::string food;
    std::optional<kitchen::StorageRow> frozen;
    std::optional<kitchen::FridgeRow> chilled;
    std::optional<kitchen::DaysLeft> thawed;
    std::optional<kitchen::SafeMinimum> minimum;
    std::optional<kitchen::UnsuitableRow> unsuitable;
    std::vector<std::string> words; ///< everyday words that mean it, in the language asked for
};

/// The kinds of food that `words` have to do with, or all of them where they are empty; none where
/// no kind comes near them.
/// \param storage_list the list of storage times that is asked first: "us"
/// \param language of the words: "en"
std::vector<FoodFacts> food_facts(const std::string& words, const std::string& storage_list,
                                  const std::string& language);

/// Why a kind of food is no good frozen.
std::string_view why_text(const kitchen::UnsuitableRow& row);

} // namespace thawslip::service

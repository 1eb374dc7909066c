#pragma once

#include "kitchen/foods/food_senses.h"
#include "kitchen/storage/storage.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// How far the words of `food` say which kind is meant.
enum class FoodCertainty {
    Sure,    ///< one choice, and every word is known
    Asked,   ///< several kinds of food are called that
    Unsure,  ///< some words are not known: the choices are guesses
    Unknown, ///< nothing near is known
};

struct FoodReading {
    FoodCertainty certainty = FoodCertainty::Unknown;
    std::vector<FoodChoice> choices; ///< the rawest first
};

/// What a cook's words for food mean. A name of the table (also of what does not freeze well) is
/// sure; everyday words in English, Spanish and German are put together ("grilled chicken thighs"
/// is cooked poultry). What may be raw or cooked is asked, the raw kind first.
FoodReading read_food(const StorageTable& table, std::string_view text);

/// Whether a kind of the table is raw meat, fish or egg.
bool is_raw_kind(const StorageTable& table, std::string_view kind);

/// The kinds that were probably meant by words that nobody knows: read as if the words nearest in
/// spelling had been written, as one choice to be taken as it stands. Never of a lower safe
/// minimum or a longer life, frozen or chilled, than any of those words has raw; nothing where no
/// kind is that strict.
std::optional<FoodChoice> nearest_food(const StorageTable& table, std::string_view text);

/// Whether food of `one` may be heated less, or kept longer in the refrigerator, than food of
/// `other`. How long it stays good in the freezer is no matter of safety.
bool is_less_careful(const StorageTable& table, const FoodChoice& one, const FoodChoice& other);

/// Whether food of `one` may be heated less, or kept longer, frozen too, than food of `other`.
bool is_laxer(const StorageTable& table, const FoodChoice& one, const FoodChoice& other);

/// `"raw sausage" and "raw ground poultry"`, or as an array of TOML: `["a", "b"]`.
std::string said(const FoodChoice& choice);
std::string as_toml(const FoodChoice& choice);

} // namespace thawslip::kitchen

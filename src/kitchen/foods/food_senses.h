#pragma once

#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// Kinds of food that all apply at once, as the list of `food` names them.
using FoodChoice = std::vector<std::string>;

/// Each kind of the choices, once, at the end of `all`.
void add_kinds(FoodChoice& all, const std::vector<FoodChoice>& choices);

enum class FoodState { NotSaid, Raw, Cooked, Smoked };

/// The state that a word of table [state] means.
FoodState state_named(std::string_view means);

/// What is said of one animal: "chicken", "thighs", "grilled".
struct Animal {
    std::string_view base; ///< as in food_words/en.toml, table [base]
    std::string_view form; ///< as in table [form]; empty: not said
    FoodState state = FoodState::NotSaid;
};

/// Whether a base is an animal (or its egg), and not a plant.
bool is_animal(std::string_view base);

/// The kinds that food of an animal can be, the rawest first. What is ground or offal is raw
/// unless it is said to be cooked.
std::vector<FoodChoice> senses_of(const Animal& animal);

/// How what is cooked for certain would be called raw, the rawest first: "uncooked lasagne" holds
/// raw meat or poultry. Empty for what has no raw animal food in it.
std::vector<FoodChoice> raw_of(std::string_view cooked_kind);

/// The kinds that plants of these bases can be; the strictest first. Empty where none is one.
std::vector<FoodChoice> plant_senses(const std::vector<std::string_view>& bases, FoodState state);

} // namespace thawslip::kitchen

#pragma once

#include "kitchen/cautions/cautions.h"
#include "kitchen/cooking/safe_minimum.h"
#include "kitchen/measures/unit_style.h"
#include "kitchen/texts/phrases.h"

#include <algorithm>
#include <chrono>
#include <cstddef>
#include <initializer_list>
#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

// The rules by topic, and what they share. Only the cautions' own sources include this.

namespace thawslip::kitchen {

std::span<const CautionRule> temperature_rules();
std::span<const CautionRule> side_rules();
std::span<const CautionRule> slow_cooker_rules();
std::span<const CautionRule> thaw_rules();
std::span<const CautionRule> ceiling_rules();
std::span<const CautionRule> pairing_rules();
std::span<const CautionRule> food_rules();
std::span<const CautionRule> plant_rules();
std::span<const CautionRule> handling_rules();
std::span<const CautionRule> kind_rules();
std::span<const CautionRule> part_cooking_rules();
std::span<const CautionRule> cook_time_rules();
std::span<const CautionRule> freezing_rules();
std::span<const CautionRule> plausible_rules();
std::span<const CautionRule> ahead_rules();
std::span<const CautionRule> people_rules();
std::span<const CautionRule> allergen_rules();
std::span<const CautionRule> standing_rules();

namespace scene {

using Findings = std::vector<Finding>;

/// A rule that refuses the package, in a row of a topic's table.
constexpr CautionRule refusal(std::string_view id, std::string_view source,
                              Findings (*find)(const Scene&), std::string_view message,
                              std::string_view hint = {}) {
    return {id, CautionLevel::Refuse, source, find, {}, {message, hint}};
}

/// The name of something in a rule's own type: `harmed_as<"limp">`.
template <std::size_t size>
struct Word {
    char letters[size];
    // NOLINTNEXTLINE(google-explicit-constructor)
    consteval Word(const char (&text)[size]) { std::ranges::copy(text, letters); }
    // NOLINTNEXTLINE(google-explicit-constructor)
    constexpr operator std::string_view() const { return {letters, size - 1}; }
};

/// One finding where the rule applies, else none.
Findings found_if(bool applies, KeyPath where, std::vector<std::string> values = {});

bool is_in(const Package& package, Vessel vessel);
bool has_target(const Scene& scene); ///< whether the cook says how hot it must get
bool holds(const Scene& scene, std::initializer_list<FoodKind> kinds); ///< any class of these
/// The same of other foods than the package's.
bool any_of_kinds(const Scene& scene, std::span<const std::string> foods,
                  std::initializer_list<FoodKind> kinds);
bool holds_raw(const Scene& scene);
/// Perishable, as far as the storage classes say; what is in no class is taken to be.
bool is_perishable(const Scene& scene);
bool holds_class(const Scene& scene, std::string_view food); ///< letter case does not matter

/// Whether any of `words` is one of the text's own words.
bool says_any(const std::vector<std::string>& text, std::initializer_list<std::string_view> words);

/// A text of the description with its place.
struct PlacedText {
    std::string text;
    KeyPath where;
};

/// What names food: the dish, its ingredients, what is added on cook day.
std::vector<PlacedText> food_texts(const Package& package);
/// The same without what stays out of the bag.
std::vector<PlacedText> texts_in_bag(const Package& package);
/// The same with the note.
std::vector<PlacedText> texts_of_bag(const Package& package);

/// A package of nothing but what is added, or cooked beside the bag, for whoever looks at packages.
Package alone(const Finish& finish);
Package alone(const Side& side);

/// The findings of a rule in each side, as in a package of its own, placed at the side.
Findings in_sides(const Scene& scene, Findings (*find)(const Scene&));

/// Whether it was cooked before it was frozen, for certain: its words or its kind say so.
bool is_surely_cooked(const Scene& scene);

/// The first of the texts that names what a phrase_book() looks for, and does not deny that very
/// thing; nothing where none does.
std::optional<PlacedText> first_named(const std::vector<PlacedText>& texts, Section section,
                                      std::string_view meaning);

/// How long it is cooked at least from the moment it is added; nothing where that is not known.
/// What is under pressure from the start is hotter than boiling: common practice, no source.
std::optional<std::chrono::minutes> cooks_for(const Scene& scene, const Finish& finish);

/// Where a text has phrases of a phrase_book(), in order. Unlike mentions() of a section they keep
/// no phrase of another meaning from being seen.
std::vector<Mention> phrases_in(const WordedText& text, Section section, std::string_view meaning);

/// Whether the words name fish that is smoked, cured or pickled: "Matjes", "smoked char", "salmón
/// marinado".
bool names_cured_fish(const Scene& scene, const std::string& words);

/// The texts of which `says` holds.
template <class Says>
Findings texts_that(const Scene& scene, Says says) {
    Findings found;
    for (const auto& read : scene.texts) {
        if (says(read)) {
            found.push_back({{read.written}, read.where});
        }
    }
    return found;
}

/// Where words that name no food say something of food that spoils.
template <class Says>
Findings said_of_handling(const Scene& scene, Says says) {
    return is_perishable(scene) ? texts_that(scene,
                                             [&](const ReadText& read) {
                                                 return !names_food(read.field) && says(read);
                                             })
                                : Findings{};
}

/// In degrees Celsius; what is cooler is about thawing, or about a cold room.
inline constexpr double barely_warm = 35.0;

/// Whether the words say that food has been cooked, by the cook or by its maker, and not that it is
/// raw.
bool says_cooked(std::string_view words);

/// "No", "without" and the like, in English, Spanish and German.
bool says_no(const std::vector<std::string>& words);

/// Whether any free words name the meaning, whatever stands around it.
bool says_anywhere(const Scene& scene, Section section, std::string_view meaning);

UnitStyle style(const Scene& scene);
/// `165 °F (74 °C)`, in the order of the kitchen's own measures.
std::string minimum_text(const Scene& scene, const SafeMinimum& minimum);

KeyPath food_place(const Scene& scene);
KeyPath method_place(const Scene& scene); ///< of how it thaws
/// The place of `key` in the cook table, or of the package where there is no such table.
KeyPath cook_place(const Scene& scene, std::string_view key);

} // namespace scene

} // namespace thawslip::kitchen

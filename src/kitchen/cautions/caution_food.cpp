#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/dish_words.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view by_the_eye =
    "FoodSafety.gov, Cook to a Safe Minimum Internal Temperature";

constexpr std::string_view garlic_source =
    "National Center for Home Food Preservation, Freezing: Garlic-in-Oil, 2015";

/// How hot it must get stands in the same sentence: flesh and shells are what a cook looks at.
Findings shellfish(const Scene& scene) {
    const auto minimum = safe_minimum(scene.table, scene.package);
    if (!minimum || !holds(scene, {FoodKind::RawShellfish})) {
        return {};
    }
    const auto hot = has_target(scene) ? to_text(*scene.package.cook->until,
                                                 TemperatureUse::SafeMinimum, style(scene))
                                       : minimum_text(scene, *minimum);
    return {{{hot}, food_place(scene)}};
}

/// Where a target is set, it is that of raw pork at least.
Findings raw_bacon(const Scene& scene) {
    return found_if(holds_class(scene, "bacon") && !has_target(scene), food_place(scene));
}

Findings vegetables(const Scene& scene) {
    return found_if(holds(scene, {FoodKind::Vegetable}) && !has_target(scene), food_place(scene));
}

/// Whether the thaw line says by when to cook it, in days or "at once": two figures on a print are
/// one too many.
bool says_days_once_thawed(const Scene& scene) {
    return scene.package.thaw.method != ThawMethod::Refrigerator ||
           days_left_after_thawing(scene.table, scene.package.food, std::chrono::days{0});
}

Findings garlic_in_oil(const Scene& scene) {
    if (const auto named =
            first_named(texts_in_bag(scene.package), Section::Hazard, "garlic in oil")) {
        return {{{}, named->where}};
    }
    const bool is_kind = contains(scene.package.food, "garlic or herbs in oil");
    return found_if(is_kind, food_place(scene));
}

Findings garlic_with_days(const Scene& scene) {
    return says_days_once_thawed(scene) ? Findings{} : garlic_in_oil(scene);
}

Findings garlic_without_days(const Scene& scene) {
    return says_days_once_thawed(scene) ? garlic_in_oil(scene) : Findings{};
}

/// "Graved Saibling", "cured trout": raw fish that is not cooked either.
std::optional<PlacedText> cured_raw(const Scene& scene) {
    constexpr double kills_parasites = 60.0;
    const auto texts = texts_of_bag(scene.package);
    const auto named = std::ranges::find_if(
        texts, [&](const PlacedText& text) { return names_cured_fish(scene, text.text); });
    const bool cooked = has_target(scene) && scene.package.cook->until->celsius >= kills_parasites;
    return cooked || named == texts.end() ? std::nullopt : std::optional{*named};
}

/// The parasites in it need -20 °C for a week; a home freezer is only asked for -18.
Findings raw_fish(const Scene& scene) {
    const bool fish = holds(scene, {FoodKind::RawFish, FoodKind::RawShellfish});
    auto named = fish ? first_named(texts_of_bag(scene.package), Section::Hazard, "eaten raw")
                      : std::nullopt;
    if (fish && !named) {
        named = cured_raw(scene);
    }
    return named ? Findings{{{published_text(-4, TemperatureUse::ColdLimit, style(scene))},
                             named->where}}
                 : Findings{};
}

/// Bird and stuffing both thaw and heat too slowly.
Findings stuffed_poultry(const Scene& scene) {
    const auto filled = filled_in(scene.package);
    return holds(scene, {FoodKind::RawPoultry}) && filled && filled->stuffed
               ? Findings{{{filled->written}, filled->where}}
               : Findings{};
}

/// As for a food that is called "raw stuffed meat"; where a stuffed vegetable holds raw mince, only
/// the safe minimum is another.
Findings stuffed_meat(const Scene& scene) {
    const auto filled = filled_in(scene.package);
    return holds(scene, {FoodKind::RawCut}) && filled && filled->stuffed
               ? Findings{{{filled->written}, filled->where}}
               : Findings{};
}

Findings raw_dough(const Scene& scene) {
    const auto named = first_named({{scene.package.dish, scene.package.where.key("dish")}},
                                   Section::Hazard, "raw dough");
    return named ? Findings{{{}, named->where}}
                 : found_if(holds_class(scene, "yeast dough or pie shells"), food_place(scene));
}

constexpr CautionRule food_rows[] = {
    refusal("stuffed-poultry", "University of Missouri Extension, 2009", stuffed_poultry,
            "\"{0}\": poultry that was stuffed at home must not be frozen, it thaws and heats too "
            "slowly",
            "freeze the bird and its stuffing apart"),
    refusal(
        "stuffed-meat", "University of Missouri Extension, 2009", stuffed_meat,
        "\"{0}\": meat that was stuffed at home must not be frozen, it thaws and heats too slowly",
        "freeze the meat and its stuffing apart"),
    {"shellfish", CautionLevel::LabelAndCard, by_the_eye, shellfish,
     "COOK UNTIL OPAQUE AND SHELLS OPEN"},
    {"bacon-raw", CautionLevel::LabelAndCard, "USDA FSIS, Bacon and Food Safety (read in a copy)",
     raw_bacon, "COOK THROUGH BEFORE EATING"},
    {"dough-raw", CautionLevel::Card, "CDC, Raw Flour and Dough (read in a copy)", raw_dough},
    {"vegetables-cook", CautionLevel::LabelAndCard,
     "Food Standards Agency and Food Standards Scotland, Precautionary advice on cooking frozen "
     "vegetables, 2018",
     vegetables, "COOK BEFORE EATING"},
    {"garlic-in-oil", CautionLevel::LabelAndCard, garlic_source, garlic_without_days,
     "THAWED KEEP CHILLED"},
    {"garlic-in-oil-days", CautionLevel::LabelAndCard, garlic_source, garlic_with_days,
     "THAWED KEEP CHILLED - USE IN 4 DAYS"},
    {"fish-eaten-raw", CautionLevel::LabelAndCard,
     "FDA Food Code 3-402.11, Parasite Destruction (read in a copy)", raw_fish,
     "NOT TO BE EATEN RAW"},
};

} // namespace

std::span<const CautionRule> food_rules() {
    return food_rows;
}

} // namespace thawslip::kitchen

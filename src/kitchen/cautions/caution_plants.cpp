#include "kitchen/cautions/caution_topics.h"
#include "kitchen/measures/quantity.h"

#include <algorithm>

// Plants and mushrooms that make ill until they are cooked, and parts of plants that are no food.

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view cooked_source =
    "BfR, on elderberries, on cassava and on phasin in beans; FDA, Investigation of Illnesses: "
    "Morel Mushrooms, 2023; "
    "Food Standards Australia New Zealand, on bamboo shoots (all from memory)";
constexpr std::string_view poison_source =
    "EFSA, Acute health risks related to the presence of cyanogenic glycosides in raw apricot "
    "kernels, 2016; BfR, on glycoalkaloids in potatoes, 2018 (both from memory)";

/// The first of the texts that names one of them and does not say that it has been cooked.
std::optional<PlacedText> raw_plant(const std::vector<PlacedText>& texts) {
    const auto named = first_named(texts, Section::Hazard, "poisonous raw");
    return named && says_cooked(named->text) ? std::nullopt : named;
}

/// Eaten as it thaws: nothing says how it is cooked, nor that it has been.
Findings raw_plant_in_bag(const Scene& scene) {
    const auto& cook = scene.package.cook;
    const bool hot = cook && (cook->vessel != Vessel::Other || cook->until); // a blender is not
    const bool cooked =
        holds(scene, {FoodKind::CookedDish, FoodKind::Leftover, FoodKind::ReadyToEat});
    const auto named = hot || cooked ? std::nullopt : raw_plant(texts_in_bag(scene.package));
    return named ? Findings{{{named->text}, named->where}} : Findings{};
}

Findings raw_plant_at_serving(const Scene& scene) {
    Findings found;
    for (const auto& finish : scene.package.finish) {
        const auto named = raw_plant({{text_of(finish.add), finish.where.key("add")}});
        if (named && finish.when.anchor == When::Anchor::AtServing) {
            found.push_back({{named->text}, named->where});
        }
    }
    return found;
}

Findings no_food(const Scene& scene) {
    const auto named = first_named(food_texts(scene.package), Section::Hazard, "no food");
    return named ? Findings{{{named->text}, named->where}} : Findings{};
}

constexpr CautionRule plant_rows[] = {
    {"plant-cook", CautionLevel::LabelAndCard, cooked_source, raw_plant_in_bag,
     "COOK THROUGH BEFORE EATING"},
    {"plant-addition", CautionLevel::Card, cooked_source, raw_plant_at_serving},
    {"plant-poison", CautionLevel::Report, poison_source, no_food},
};

} // namespace

std::span<const CautionRule> plant_rules() {
    return plant_rows;
}

} // namespace thawslip::kitchen

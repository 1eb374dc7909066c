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

/// Cooked by its words, or from a can; what is only in a jar may have been put there raw.
bool is_cooked(std::string_view words) {
    const auto text = worded(words);
    return !says(text, Section::BeanState, "dried") &&
           mentions(text, Section::BeanState, "canned").size() >
               mentions(text, Section::BeanState, "packed").size();
}

/// The first of the texts that names one of them and does not say that it has been cooked.
std::optional<PlacedText> raw_plant(const std::vector<PlacedText>& texts) {
    const auto named = first_named(texts, Section::Hazard, "poisonous raw");
    return named && is_cooked(named->text) ? std::nullopt : named;
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

/// What is added so late that it does not cook through.
Findings raw_plant_added(const Scene& scene) {
    constexpr std::chrono::minutes cooks_through{10}; // BfR, on phasin in green beans (from memory)
    Findings found;
    for (const auto& finish : scene.package.finish) {
        const auto named = raw_plant({{text_of(finish.add), finish.where.key("add")}});
        const auto cooks = cooks_for(scene, finish);
        if (named && cooks && *cooks < cooks_through) {
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
    {"plant-addition", CautionLevel::Card, cooked_source, raw_plant_added},
    {"plant-poison", CautionLevel::Report, poison_source, no_food},
};

} // namespace

std::span<const CautionRule> plant_rules() {
    return plant_rows;
}

} // namespace thawslip::kitchen

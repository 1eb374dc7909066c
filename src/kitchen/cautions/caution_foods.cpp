#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/sources.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

using namespace scene;

/// `"pork shoulder" as "raw roasts"; "eggs" as "egg casserole"`.
std::string counted(const std::vector<NamedFood>& foods) {
    std::vector<std::string> each;
    for (const auto& named : foods) {
        add_once(each, fmt::format("\"{}\": {}", named.words, kitchen::said(named.kinds)));
    }
    return joined(each, "; ");
}

Findings from_words(const Scene& scene) {
    if (scene.package.food_basis != FoodBasis::Words) {
        return {};
    }
    const auto named = foods_named(scene.table, scene.package);
    const auto text = named.empty() ? fmt::format("\"{}\": {}", scene.package.dish,
                                                  kitchen::said(scene.package.food))
                                    : counted(named);
    return {{{text}, scene.package.where.key("use_by")}};
}

Findings no_words(const Scene& scene) {
    if (scene.package.food_basis != FoodBasis::Nothing) {
        return {};
    }
    const auto minimum = safe_minimum(scene.table, scene.package);
    return {{{minimum ? minimum_text(scene, *minimum) : std::string{}},
             scene.package.where.key("use_by")}};
}

/// Whether the cook's own word for the food leaves no room for meat: "vegetable soup", "fruit".
bool says_no_animal(const Scene& scene) {
    const bool plants = std::ranges::all_of(scene.package.food, [](const std::string& food) {
        return is_one_of(food,
                         {"cooked vegetable dish", "tomato or vegetable sauce", "cooked beans",
                          "cooked rice", "cooked pasta", "tofu", "fruit", "blanched vegetables"});
    });
    // Word by word, for "vegetable soup" is one kind by itself.
    const auto is_plant = [&](const std::string& word) {
        const auto match = match_foods(scene.table.words, {word}).front();
        return match.word != nullptr && (match.word->role == FoodRole::NoAnimal ||
                                         is_one_of(match.word->means, {"vegetable", "pulse"}));
    };
    const auto names_plants = [&](const std::string& written) {
        return std::ranges::any_of(words_of(written), is_plant);
    };
    return plants || std::ranges::any_of(scene.package.food_as_written, names_plants);
}

/// Whether one of the words can mean what `food` says: "beef" is also roasts and stew meat.
bool is_named_so(const Scene& scene, const NamedFood& named) {
    return std::ranges::any_of(
        scene.package.food, [&](const std::string& food) { return contains(named.may_be, food); });
}

/// Whether the dish's own name reads as `food` says, as a whole: "duck pâté" as pâté.
bool reads_so(const Scene& scene, const NamedFood& named) {
    if (!(named.where == scene.package.where.key("dish"))) {
        return false;
    }
    const auto reading = read_food(scene.table, scene.package.dish);
    return reading.certainty == FoodCertainty::Sure &&
           reading.choices.front() == scene.package.food;
}

/// Whether what is in the bag asks for more care than `food` says.
bool asks_for_more(const Scene& scene, const NamedFood& named) {
    if (named.said_raw && named.is_animal && !holds_raw(scene)) {
        return true;
    }
    if (is_named_so(scene, named) || reads_so(scene, named)) {
        return false;
    }
    const bool is_egg = named.kinds.front() == "egg casserole";
    if (named.is_animal && !is_egg && says_no_animal(scene)) {
        return true;
    }
    const bool cooked =
        holds(scene, {FoodKind::CookedDish, FoodKind::Leftover, FoodKind::InfantFood});
    return named.is_animal && !cooked &&
           is_less_careful(scene.table, scene.package.food, named.kinds);
}

Findings says_less(const Scene& scene) {
    Findings found;
    if (scene.package.food_basis != FoodBasis::Given || scene.package.food.empty()) {
        return found;
    }
    for (const auto& named : foods_in_bag(scene.table, scene.package)) {
        if (asks_for_more(scene, named)) {
            found.push_back(
                {{named.words, kitchen::said(named.kinds), kitchen::said(scene.package.food)},
                 named.where});
        }
    }
    return found;
}

Findings infant_food(const Scene& scene) {
    return found_if(holds(scene, {FoodKind::InfantFood}) &&
                        scene.package.thaw.method == ThawMethod::Refrigerator,
                    food_place(scene));
}

/// Its list knows the refrigerator only; a bag that is thawed otherwise must not wait at all.
Findings infant_food_at_once(const Scene& scene) {
    return found_if(holds(scene, {FoodKind::InfantFood}) &&
                        scene.package.thaw.method != ThawMethod::Refrigerator,
                    food_place(scene));
}

/// No list of foods is right for it: it is never hot, nor in a microwave, and formula is not
/// frozen.
Findings infant_milk(const Scene& scene) {
    const auto named = first_named(food_texts(scene.package), Section::Hazard, "infant milk");
    return named ? Findings{{{named->text}, named->where}} : Findings{};
}

constexpr CautionRule foods_rows[] = {
    refusal(
        "infant-milk",
        "CDC, Proper Storage and Preparation of Breast Milk (read in reprints); formula is not "
        "frozen: from memory",
        infant_milk,
        "\"{0}\": the figures of these labels are those of food and wrong for a baby's milk, "
        "which must never be made hot or thawed in a microwave",
        "follow your health service, or the maker of the formula, for how it is kept and warmed"),
    {"food-from-words", CautionLevel::Report, practice, from_words},
    {"food-unknown", CautionLevel::Report, "FoodSafety.gov, Safe Minimum Internal Temperatures",
     no_words},
    {"food-says-less", CautionLevel::Report, practice, says_less},
    {"infant-food", CautionLevel::LabelAndCard,
     "New Zealand Ministry of Health, Making your own baby food", infant_food,
     "FOR A BABY - USE THE DAY IT THAWED"},
    {"infant-food-at-once", CautionLevel::LabelAndCard,
     "New Zealand Ministry of Health, Making your own baby food", infant_food_at_once,
     "FOR A BABY - USE IT AT ONCE"},
};

} // namespace

std::span<const CautionRule> kind_rules() {
    return foods_rows;
}

} // namespace thawslip::kitchen

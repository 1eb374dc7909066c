#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/beans.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/measures/hold_time.h"
#include "kitchen/sources.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/text.h"

#include <algorithm>

// What is added on cook day, or cooked beside the bag, has no target of its own: where its words
// name raw meat, fish or eggs, the card says how hot those must get. And it goes into a vessel that
// may be too slow for it.

namespace thawslip::kitchen {
namespace {

using namespace scene;

/// Where words stand in a text; nothing where they do not.
std::optional<Mention> place_of(const std::vector<std::string>& words, const WordedText& text) {
    const auto found =
        std::search(text.words.begin(), text.words.end(), words.begin(), words.end());
    if (words.empty() || found == text.words.end()) {
        return std::nullopt;
    }
    return Mention{static_cast<std::size_t>(found - text.words.begin()), words.size(), {}, {}};
}

bool overlaps(const Mention& a, const Mention& b) {
    return a.first < b.first + b.count && b.first < a.first + a.count;
}

/// "Goat's milk", "Ziegenkäse", "queso de cabra": it is of the animal and not beside it.
bool is_milk_of(const Mention& milk, const Mention& animal, const WordedText& text) {
    const auto joined_by = [&](const Mention& one, const Mention& next, std::string_view word) {
        const auto end = one.first + one.count;
        return end == next.first || (end + 1 == next.first && text.words[end] == word);
    };
    return overlaps(milk, animal) || joined_by(animal, milk, "s") || joined_by(milk, animal, "de");
}

/// Whether its maker made it to be eaten so: tuna of a tin or in oil, ham, goat's milk. Of meat and
/// poultry oil, brine and what is dried beside them say nothing.
bool is_made_to_be_eaten(const Scene& scene, const WordedText& text, const NamedFood& named) {
    if (says(text, Section::BeanState, "canned")) {
        return true;
    }
    const auto animal = place_of(words_of(named.words), text);
    const bool of_sea =
        any_of_kinds(scene, named.kinds, {FoodKind::RawFish, FoodKind::RawShellfish});
    const auto cured = mentions(text, Section::Doing, "cured");
    const auto milk = mentions(text, Section::Allergen, "milk");
    return (of_sea && is_meant(text, cured)) ||
           (animal && std::ranges::any_of(cured,
                                          [&](const Mention& each) {
                                              return overlaps(each, *animal) ||
                                                     each.first + each.count == animal->first;
                                          })) ||
           (animal && std::ranges::any_of(milk, [&](const Mention& each) {
                return is_milk_of(each, *animal, text);
            }));
}

/// Whether the words mean what is eaten as it comes; and of what is added at serving, all that may
/// be cooked already.
bool may_be_eaten_so(const Scene& scene, const std::string& words, bool at_serving,
                     const NamedFood& named) {
    if (named.said_raw || says_raw(scene.table, words)) {
        return false;
    }
    const bool cooked =
        !named.is_uncooked_egg && std::ranges::any_of(named.may_be, [&](const std::string& food) {
            return !is_raw(kind_of(scene.table, food));
        });
    return (cooked && at_serving) || is_made_to_be_eaten(scene, worded(words), named);
}

/// How hot what stands alone must get, by the raw meat, fish or eggs that its words name.
std::optional<SafeMinimum> minimum_of_raw(const Scene& scene, Package package, bool at_serving) {
    for (const auto& named : foods_named(scene.table, package)) {
        const bool egg =
            named.is_uncooked_egg || any_of_kinds(scene, named.kinds, {FoodKind::RawEgg});
        const bool raw_animal = named.is_animal && any_raw(scene.table, named.kinds);
        if ((egg || raw_animal) && !may_be_eaten_so(scene, package.dish, at_serving, named)) {
            add_kinds(package.food,
                      {named.is_uncooked_egg ? FoodChoice{"beaten eggs"} : named.kinds});
        }
    }
    return safe_minimum(scene.table, package);
}

/// Whether it is in the pot for as long as the bag's own food, whose target is hot enough for it.
bool is_cooked_along(const Scene& scene, const Finish& finish, const SafeMinimum& minimum) {
    const bool from_start = finish.when.anchor == When::Anchor::AtStart;
    return from_start && has_target(scene) &&
           reaches(scene.package.cook->until->celsius, minimum, scene.package.cook->hold);
}

/// What it is, how hot it must get, and for how long where the list says so.
Finding how_hot(const Scene& scene, const Package& what, const SafeMinimum& minimum,
                const KeyPath& where) {
    Finding found{{what.dish, minimum_text(scene, minimum)}, where.key("add")};
    const auto hold = minimum.time_counts ? needed_hold(minimum.celsius) : std::nullopt;
    if (hold) {
        found.values.push_back(hold_text(*hold));
    }
    return found;
}

Findings raw_things(const Scene& scene) {
    Findings found;
    for (const auto& finish : scene.package.finish) {
        const auto minimum =
            minimum_of_raw(scene, alone(finish), finish.when.anchor == When::Anchor::AtServing);
        if (minimum && !is_cooked_along(scene, finish, *minimum)) {
            found.push_back(how_hot(scene, alone(finish), *minimum, finish.where));
        }
    }
    for (const auto& side : scene.package.sides) {
        if (const auto minimum = minimum_of_raw(scene, alone(side), false)) {
            found.push_back(how_hot(scene, alone(side), *minimum, side.where));
        }
    }
    return found;
}

Findings raw_additions(const Scene& scene) {
    auto found = raw_things(scene);
    std::erase_if(found, [](const Finding& one) { return one.values.size() > 2; });
    return found;
}

Findings raw_additions_held(const Scene& scene) {
    auto found = raw_things(scene);
    std::erase_if(found, [](const Finding& one) { return one.values.size() == 2; });
    return found;
}

bool says_frozen(std::string_view written) {
    const auto text = worded(written);
    return is_meant(text, mentions(text, Section::Thawing, "frozen")) ||
           is_meant(text, mentions(text, Section::Thawing, "goods"));
}

bool adds_animal(const Scene& scene, const Package& package) {
    return std::ranges::any_of(foods_named(scene.table, package), &NamedFood::is_animal);
}

/// Meat or fish that goes into a slow cooker frozen, beside the bag's own food or by itself.
Findings frozen_addition(const Scene& scene) {
    Findings found;
    for (const auto& finish : scene.package.finish) {
        const auto added = alone(finish);
        if (is_in(scene.package, Vessel::SlowCooker) && says_frozen(added.dish) &&
            finish.when.anchor != When::Anchor::AtServing && adds_animal(scene, added)) {
            found.push_back({{added.dish}, finish.where.key("add")});
        }
    }
    for (const auto& side : scene.package.sides) {
        const auto added = alone(side);
        const bool frozen = says_frozen(added.dish) || std::ranges::any_of(side.steps, says_frozen);
        if (side.vessel == Vessel::SlowCooker && frozen && adds_animal(scene, added)) {
            found.push_back({{added.dish}, side.where.key("add")});
        }
    }
    return found;
}

/// Frozen vegetables that are added at serving: they were only blanched.
Findings frozen_vegetables(const Scene& scene) {
    Findings found;
    for (const auto& finish : scene.package.finish) {
        const auto words = text_of(finish.add);
        const auto matches = match_foods(scene.table.words, words_of(words));
        const bool plant = std::ranges::any_of(matches, [](const FoodMatch& match) {
            return match.word != nullptr && match.word->role == FoodRole::Base &&
                   is_one_of(match.word->means, {"vegetable", "pulse"});
        });
        if (plant && finish.when.anchor == When::Anchor::AtServing && says_frozen(words)) {
            found.push_back({{words}, finish.where.key("add")});
        }
    }
    return found;
}

/// Dried beans that are not boiled for long enough: they come too late, or all of it is short.
Findings late_beans(const Scene& scene) {
    const auto boil = bean_boil(scene.table.rule_set);
    Findings found;
    const auto look_at = [&](const Quantity& add, std::optional<std::chrono::minutes> cooks,
                             const KeyPath& where) {
        if (cooks && *cooks < boil && bean_state(worded(text_of(add)), boil) == BeanState::Dry) {
            found.push_back({{text_of(add), std::to_string(boil.count())}, where});
        }
    };
    if (steps_boil_beans(scene.texts, boil)) {
        return found;
    }
    for (const auto& finish : scene.package.finish) {
        look_at(finish.add, cooks_for(scene, finish), finish.where.key("when"));
    }
    for (const auto& side : scene.package.sides) {
        if (side.vessel != Vessel::PressureCooker) {
            look_at(side.add, side.takes.low, side.where.key("takes"));
        }
    }
    return found;
}

/// Dried beans in the bag that its cooking does not boil for long enough: those that are uncooked
/// by their own words, or all others, which may have been boiled before they were frozen.
Findings beans_in_bag(const Scene& scene, bool uncooked) {
    const auto boil = bean_boil(scene.table.rule_set);
    const auto& cook = scene.package.cook;
    const auto cooks = cook && cook->time ? cook->time->low : std::chrono::minutes{0};
    Findings found;
    if (cooks >= boil || is_in(scene.package, Vessel::PressureCooker) ||
        steps_boil_beans(scene.texts, boil)) {
        return found;
    }
    for (const auto& [text, where] : texts_in_bag(scene.package)) {
        const auto read = worded(text);
        if (bean_state(read, boil) == BeanState::Dry && names_uncooked_beans(read) == uncooked) {
            found.push_back({{text, std::to_string(boil.count())}, where});
        }
    }
    return found;
}

Findings uncooked_beans(const Scene& scene) {
    return beans_in_bag(scene, true);
}

Findings perhaps_unboiled_beans(const Scene& scene) {
    return beans_in_bag(scene, false);
}

/// What goes into a pressure cooker while it cooks.
Findings added_under_pressure(const Scene& scene) {
    Findings found;
    for (const auto& finish : scene.package.finish) {
        const bool while_cooking = finish.when.anchor != When::Anchor::AtStart &&
                                   finish.when.anchor != When::Anchor::AtServing;
        if (while_cooking && is_in(scene.package, Vessel::PressureCooker)) {
            found.push_back({{text_of(finish.add)}, finish.where.key("when")});
        }
    }
    return found;
}

constexpr CautionRule sides_rows[] = {
    {"under-pressure", CautionLevel::Card, practice, added_under_pressure,
     "LET PRESSURE DOWN BEFORE OPENING"},
    refusal("addition-frozen", slow_cooker_safety, frozen_addition,
            "\"{0}\": frozen meat or fish must not go into a slow cooker, it warms too slowly",
            "thaw it in the refrigerator first, and write it so: \"chicken thighs, thawed\""),
    refusal("beans-late", bean_source, late_beans,
            "\"{0}\" boils for less than {1} min there, which dried beans need: their toxin is "
            "destroyed by boiling alone",
            "boil them first, and write it: \"beans, boiled 30 min\"; or take canned ones"),
    refusal(
        "beans-uncooked", bean_source, uncooked_beans,
        "\"{0}\" does not boil for {1} min on cook day, which dried beans need: their toxin is "
        "destroyed by boiling alone",
        "boil them before they are frozen, and write it: \"beans, boiled 30 min\"; or boil them "
        "that long on cook day, in a pot"),
    {"beans-perhaps-unboiled", CautionLevel::Report, bean_source, perhaps_unboiled_beans},
    {"addition-blanched", CautionLevel::Card,
     "Food Standards Agency and Food Standards Scotland, Precautionary advice on cooking frozen "
     "vegetables, 2018",
     frozen_vegetables},
    {"side-minimum", CautionLevel::Card, "FoodSafety.gov, Safe Minimum Internal Temperatures",
     raw_additions},
    {"side-minimum-held", CautionLevel::Card, "UK Food Standards Agency, Cooking your food",
     raw_additions_held},
};

} // namespace

std::span<const CautionRule> side_rules() {
    return sides_rows;
}

} // namespace thawslip::kitchen

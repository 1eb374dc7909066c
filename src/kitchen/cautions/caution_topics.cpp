#include "kitchen/cautions/caution_topics.h"

#include "base/list.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/text.h"

#include <algorithm>

namespace thawslip::kitchen::scene {

Findings found_if(bool applies, KeyPath where, std::vector<std::string> values) {
    return applies ? Findings{{std::move(values), std::move(where)}} : Findings{};
}

bool has_target(const Scene& scene) {
    return scene.package.cook && scene.package.cook->until.has_value();
}

bool is_in(const Package& package, Vessel vessel) {
    return package.cook && package.cook->vessel == vessel;
}

bool any_of_kinds(const Scene& scene, std::span<const std::string> foods,
                  std::initializer_list<FoodKind> kinds) {
    return std::ranges::any_of(foods, [&](const std::string& food) {
        return contains(kinds, kind_of(scene.table, food));
    });
}

bool holds(const Scene& scene, std::initializer_list<FoodKind> kinds) {
    return any_of_kinds(scene, scene.package.food, kinds);
}

bool holds_raw(const Scene& scene) {
    return any_raw(scene.table, scene.package.food);
}

bool is_perishable(const Scene& scene) {
    return scene.package.food.empty() || any_spoils(scene.table, scene.package.food);
}

bool holds_class(const Scene& scene, std::string_view food) {
    return std::ranges::any_of(
        scene.package.food, [&](const std::string& each) { return same_but_for_case(each, food); });
}

bool says_any(const std::vector<std::string>& text, std::initializer_list<std::string_view> words) {
    return std::ranges::any_of(text,
                               [&](const std::string& word) { return contains(words, word); });
}

std::vector<PlacedText> texts_in_bag(const Package& package) {
    std::vector<PlacedText> texts{{package.dish, package.where.key("dish")}};
    for (const auto& ingredient : package.ingredients) {
        if (ingredient.day != IngredientDay::CookDay) {
            texts.push_back({text_of(ingredient.add), ingredient.where.key("add")});
        }
    }
    return texts;
}

std::vector<PlacedText> texts_of_bag(const Package& package) {
    auto texts = texts_in_bag(package);
    texts.push_back({package.note, package.where.key("note")});
    return texts;
}

std::vector<PlacedText> food_texts(const Package& package) {
    auto texts = texts_in_bag(package);
    for (const auto& ingredient : package.ingredients) {
        if (ingredient.day == IngredientDay::CookDay) {
            texts.push_back({text_of(ingredient.add), ingredient.where.key("add")});
        }
    }
    for (const auto& finish : package.finish) {
        texts.push_back({text_of(finish.add), finish.where.key("add")});
    }
    return texts;
}

Package alone(const Finish& finish) {
    Package package;
    package.dish = text_of(finish.add);
    package.where = finish.where;
    return package;
}

Package alone(const Side& side) {
    Package package;
    package.dish = text_of(side.add);
    package.where = side.where;
    package.cook.emplace();
    package.cook->in = side.in;
    package.cook->setting = side.in; // "oven, 180 °C"
    package.cook->vessel = side.vessel;
    package.cook->steps = side.steps;
    return package;
}

Findings in_sides(const Scene& scene, Findings (*find)(const Scene&)) {
    Findings all;
    for (const auto& side : scene.package.sides) {
        const auto package = alone(side);
        Scene own{package, scene.made, scene.keep, scene.table, scene.settings};
        own.texts = free_texts(package);
        for (auto& finding : find(own)) {
            finding.where = side.where.key("add");
            all.push_back(std::move(finding));
        }
    }
    return all;
}

std::optional<PlacedText> first_named(const std::vector<PlacedText>& texts, Section section,
                                      std::string_view meaning) {
    const auto found = std::ranges::find_if(texts, [&](const PlacedText& text) {
        const auto read = worded(text.text);
        return is_named(read, phrases_in(read, section, meaning));
    });
    return found == texts.end() ? std::nullopt : std::optional{*found};
}

std::vector<Mention> phrases_in(const WordedText& text, Section section, std::string_view meaning) {
    return mapped(phrase_book(section, meaning).find(text.words), [](const PhraseMatch& match) {
        return Mention{match.first, match.count, match.meaning, {}};
    });
}

std::optional<std::chrono::minutes> cooks_for(const Scene& scene, const Finish& finish) {
    const auto& cook = scene.package.cook;
    const bool known = cook && cook->time && cook->vessel != Vessel::PressureCooker;
    const auto whole = known ? std::optional{cook->time->low} : std::nullopt;
    switch (finish.when.anchor) {
    case When::Anchor::AtServing: return std::chrono::minutes{0};
    case When::Anchor::BeforeEnd: return finish.when.offset;
    case When::Anchor::AfterStart:
        return whole ? std::optional{*whole - finish.when.offset} : whole;
    case When::Anchor::Halfway: return whole ? std::optional{*whole / 2} : whole;
    case When::Anchor::AtStart: break;
    }
    return whole;
}

bool names_cured_fish(const Scene& scene, const std::string& words) {
    const auto text = worded(words);
    Package named;
    named.dish = words;
    const auto is_fish = [&](const NamedFood& food) {
        return any_of_kinds(scene, food.kinds, {FoodKind::RawFish}) ||
               contains(food.kinds, "smoked fish");
    };
    return is_named(text, mentions(text, Section::Dish, "cured fish")) ||
           (is_named(text, mentions(text, Section::Dish, "cures")) &&
            std::ranges::any_of(foods_in_bag(scene.table, named), is_fish));
}

bool says_cooked(std::string_view words) {
    const auto text = worded(words);
    return says(text, Section::BeanState, "canned") && !says(text, Section::BeanState, "dried");
}

bool says_no(const std::vector<std::string>& words) {
    return says_any(words, {"no", "not", "never", "without", "dont", "cannot", "sin", "nunca",
                            "nicht", "nie", "niemals", "ohne", "kein", "keine", "keinen"});
}

bool says_anywhere(const Scene& scene, Section section, std::string_view meaning) {
    return std::ranges::any_of(
        scene.texts, [&](const ReadText& read) { return says(read.text, section, meaning); });
}

UnitStyle style(const Scene& scene) {
    return {scene.settings.units, scene.settings.measures};
}

std::string minimum_text(const Scene& scene, const SafeMinimum& minimum) {
    return published_text(minimum.fahrenheit, TemperatureUse::SafeMinimum, style(scene));
}

KeyPath food_place(const Scene& scene) {
    return scene.package.where.key("food");
}

KeyPath method_place(const Scene& scene) {
    const auto& thaw = scene.package.thaw;
    if (!thaw.method_where.empty()) {
        return thaw.method_where;
    }
    return thaw.where.empty() ? scene.package.where : thaw.where.key("method");
}

KeyPath cook_place(const Scene& scene, std::string_view key) {
    return scene.package.cook ? scene.package.cook->where.key(key) : scene.package.where;
}

} // namespace thawslip::kitchen::scene

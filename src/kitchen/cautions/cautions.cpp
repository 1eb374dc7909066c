#include "kitchen/cautions/cautions.h"

#include "base/fill.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/measures/temperature_text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

Caution caution_of(const CautionRule& rule, Finding finding) {
    return {std::string{rule.id}, rule.level, std::move(finding.values), std::string{rule.source},
            std::move(finding.where)};
}

} // namespace

std::vector<CautionRule> caution_rules() {
    std::vector<CautionRule> rules;
    for (const auto topic :
         {temperature_rules(), pairing_rules(), slow_cooker_rules(), thaw_rules(), ceiling_rules(),
          cook_time_rules(), food_rules(), plant_rules(), handling_rules(), kind_rules(),
          part_cooking_rules(), freezing_rules(), plausible_rules(), ahead_rules(), side_rules(),
          people_rules(), allergen_rules(), standing_rules()}) {
        rules.insert(rules.end(), topic.begin(), topic.end());
    }
    return rules;
}

const CautionRule* find_rule(std::span<const CautionRule> rules, std::string_view id) {
    const auto found = std::ranges::find(rules, id, &CautionRule::id);
    return found == rules.end() ? nullptr : &*found;
}

std::vector<Caution> cautions(const Scene& unread) {
    auto scene = unread;
    scene.texts = free_texts(scene.package);
    scene.heat = said_heat(scene.package);
    std::vector<Caution> given;
    for (const auto& rule : caution_rules()) {
        if (rule.find == nullptr) {
            continue;
        }
        for (auto& finding : rule.find(scene)) {
            given.push_back(caution_of(rule, std::move(finding)));
        }
    }
    std::ranges::stable_sort(given, std::ranges::greater{}, &Caution::level);
    return given;
}

bool is_of_thawing(const Caution& caution) {
    const auto has = [&](std::span<const CautionRule> rules) {
        return find_rule(rules, caution.id) != nullptr;
    };
    return has(thaw_rules()) || has(ceiling_rules());
}

std::vector<Caution> day_cautions(const Day& day, const StorageTable& table,
                                  const KitchenSettings& settings) {
    const bool perishable = std::ranges::any_of(
        day.packages, [&](const Package& package) { return any_spoils(table, package.food); });
    if (!perishable) {
        return {};
    }
    const UnitStyle style{settings.units, settings.measures};
    const auto fahrenheit = [&](double degrees) {
        return published_text(degrees, TemperatureUse::ColdLimit, style);
    };
    const auto rules = caution_rules();
    return {
        caution_of(*find_rule(rules, "two-hour-rule"),
                   {{fahrenheit(40), fahrenheit(140), fahrenheit(90)}, KeyPath{"day"}}),
        caution_of(*find_rule(rules, "cool-before-freezing"),
                   {{fahrenheit(135), fahrenheit(70), fahrenheit(41)}, KeyPath{"day"}}),
        caution_of(*find_rule(rules, "freeze-in-one-layer"), {{}, KeyPath{"day"}}),
    };
}

std::string words_in_code(const Caution& caution) {
    const auto rules = caution_rules();
    const auto* rule = find_rule(rules, caution.id);
    return rule == nullptr ? std::string{} : fill(rule->in_code, caution.values);
}

} // namespace thawslip::kitchen

#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cautions/thaw_places.h"
#include "kitchen/cooking/gentle_heat.h"
#include "kitchen/foods/beans.h"
#include "kitchen/foods/dish_words.h"
#include "kitchen/sources.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/said_degrees.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <iterator>
#include <vector>

namespace thawslip::kitchen {
namespace {

using namespace scene;

bool is_slow_cooker(const Scene& scene) {
    return is_in(scene.package, Vessel::SlowCooker);
}

/// The hottest that texts of these fields name for what the food is in, with its text; nothing
/// where they name none.
struct NamedHeat {
    double celsius = 0;
    const ReadText* read = nullptr;
};
NamedHeat hottest(const Scene& scene, std::initializer_list<FreeText> fields, bool on_a_dial) {
    NamedHeat found;
    for (const auto& read : scene.texts) {
        const bool tells = contains(fields, read.field);
        for (const auto& degrees : tells ? said_degrees(read.text) : std::vector<SaidDegrees>{}) {
            const bool counts = (degrees.has_unit || on_a_dial) &&
                                !clause_says(read.text, degrees.word, Section::Doing, "core");
            if (counts && degrees.celsius > found.celsius) {
                found = {degrees.celsius, &read};
            }
        }
    }
    return found;
}

/// At these a covered dish stays below the boil for hours, and meat warms slowly. Ours.
constexpr double cool_oven_celsius = 125.0;

/// Where no temperature is named beans in an oven may never boil.
bool is_low_oven(const Scene& scene) {
    if (!is_in(scene.package, Vessel::Oven)) {
        return false;
    }
    const auto& setting = scene.package.cook->setting;
    const auto named = hottest(scene, {FreeText::CookSetting}, true);
    return named.read != nullptr
               ? named.celsius <= cool_oven_celsius
               : setting.empty() || says(worded(setting), Section::Setting, "low") ||
                     says(worded(scene.package.cook->in), Section::Setting, "low");
}

/// Raw meat in an oven of which nothing says that it gets hotter.
Findings raw_in_cool_oven(const Scene& scene) {
    const auto named = hottest(scene, {FreeText::CookSetting, FreeText::Step}, true);
    const bool cool =
        named.read != nullptr && named.celsius > barely_warm && named.celsius <= cool_oven_celsius;
    return is_in(scene.package, Vessel::Oven) && holds_raw(scene) && cool
               ? Findings{{{named.read->written}, named.read->where}}
               : Findings{};
}

Findings step_says_frozen(const Scene& scene) {
    return texts_that(scene, [&](const ReadText& read) {
        const bool slow =
            is_slow_cooker(scene) || says(read.text, Section::Appliance, "slow cooker");
        return slow && read.field == FreeText::Step &&
               is_meant(read.text, mentions(read.text, Section::Thawing, "frozen"));
    });
}

/// "Cooked beans"; "crew pot, cooked on packing day".
bool is_said_cooked(const Package& package) {
    return says_cooked(package.dish) || std::ranges::any_of(package.food, says_cooked);
}

/// A dish cooked for certain; or one that may be, in the cooker for too short to cook it raw.
bool is_reheated(const Scene& scene) {
    constexpr std::chrono::minutes too_short_to_cook{180};
    const auto& time = scene.package.cook->time;
    return is_surely_cooked(scene) ||
           (!holds_raw(scene) && holds(scene, {FoodKind::CookedDish, FoodKind::EggDish}) && time &&
            time->high < too_short_to_cook);
}

Findings reheating(const Scene& scene) {
    if (!is_slow_cooker(scene) || !is_reheated(scene)) {
        return {};
    }
    const auto minimum = safe_minimum(scene.table, scene.package);
    if (!minimum) {
        return {};
    }
    return {{{minimum_text(scene, *minimum)}, cook_place(scene, "in")}};
}

/// Whether the setting only keeps warm. What a slow cooker calls "warm" does; a pan that is warm
/// may be hot, so of others it has to say "keep", and no heat that cooks.
bool keeps_warm(const Scene& scene, const WordedText& setting) {
    constexpr double cooks = 95.0;
    if (says(setting, Section::Setting, "heat")) {
        return false; // "low, then warm"
    }
    if (is_slow_cooker(scene)) {
        return says(setting, Section::Setting, "warm");
    }
    return !is_in(scene.package, Vessel::Microwave) && is_perishable(scene) &&
           says(setting, Section::Setting, "keep") &&
           hottest(scene, {FreeText::CookSetting}, true).celsius < cooks;
}

/// "Keep warm", and nothing that heats with it.
Findings warm_setting(const Scene& scene) {
    if (is_in(scene.package, Vessel::Warmer)) {
        return {{{scene.package.cook->in}, cook_place(scene, "in")}};
    }
    const auto setting = std::ranges::find(scene.texts, FreeText::CookSetting, &ReadText::field);
    return setting != scene.texts.end() && keeps_warm(scene, setting->text)
               ? Findings{{{setting->written}, setting->where}}
               : Findings{};
}

/// "Leave it overnight on warm", "cook on the warm setting", and nothing before it that heats: not
/// "low for six hours, then on warm".
Findings warm_in_step(const Scene& scene) {
    constexpr double long_hours = 4;
    const auto setting = std::ranges::find(scene.texts, FreeText::CookSetting, &ReadText::field);
    bool heated = !is_slow_cooker(scene) ||
                  (setting != scene.texts.end() && says(setting->text, Section::Setting, "heat"));
    for (const auto& read : scene.texts) {
        for (const auto& text :
             read.field == FreeText::Step ? read.sentences : std::vector<WordedText>{}) {
            const auto clauses = clauses_of(text);
            const auto warm = mentions(text, Section::Handling, "warm setting");
            const auto end = warm.empty() ? text.words.size() : warm.front().first;
            heated = heated || std::ranges::any_of(mentions(text, Section::Setting, "heat"),
                                                   [&](const Mention& each) {
                                                       return warm.empty() ||
                                                              clauses[each.first] < clauses[end];
                                                   });
            const bool is_long = says(text, Section::Thawing, "long") ||
                                 hours_said(text) >= long_hours ||
                                 (!warm.empty() && clause_says(text, end, Section::Doing, "cook"));
            if (!heated && is_long && is_meant(text, warm)) {
                return {{{read.written}, read.where}};
            }
        }
    }
    return {};
}

Findings warm_only(const Scene& scene) {
    auto found = warm_setting(scene);
    return found.empty() ? warm_in_step(scene) : found;
}

Findings filling(const Scene& scene) {
    return found_if(is_slow_cooker(scene) && !is_no_slow_cooker(scene.package.cook->in),
                    cook_place(scene, "in"));
}

/// A whole bird with stuffing inside, by its words.
Findings stuffed_bird(const Scene& scene) {
    const auto filled = filled_in(scene.package);
    return is_slow_cooker(scene) && filled && filled->stuffed &&
                   holds(scene, {FoodKind::RawPoultry})
               ? Findings{{{filled->written}, filled->where}}
               : Findings{};
}

constexpr std::string_view slow_appliances[] = {"slow cooker", "water bath", "haybox"};

/// In a pot at 80 °C, as a step or the setting says: the hottest that anything says of it counts.
bool simmers_low(const Scene& scene) {
    constexpr double never_boils = 95.0;
    const auto named = hottest(scene, {FreeText::CookSetting, FreeText::Step}, false).celsius;
    return is_in(scene.package, Vessel::Pot) && named > barely_warm && named < never_boils;
}

/// Whether it heats too slowly to boil beans in: a slow cooker that anything names, a cool oven.
bool heats_slowly(const Scene& scene) {
    const bool named = std::ranges::any_of(scene.texts, [](const ReadText& read) {
        return read.field != FreeText::CookIn && // the vessel says what that is
               std::ranges::any_of(slow_appliances, [&](std::string_view appliance) {
                   return is_meant(read.text, mentions(read.text, Section::Appliance, appliance));
               });
    });
    return named || simmers_low(scene) || is_slow_cooker(scene) ||
           is_in(scene.package, Vessel::Warmer) || is_low_oven(scene);
}

/// Whether a text is of what cooks beside the bag in a vessel of its own.
bool is_cooked_apart(const Package& package, const ReadText& read) {
    return std::ranges::any_of(package.sides, [&](const Side& side) {
        return !side.in.empty() && side.where.leads_to(read.where);
    });
}

Findings beans(const Scene& scene, BeanState wanted) {
    const auto boil = bean_boil(scene.table.rule_set);
    Findings found;
    if (!heats_slowly(scene) || steps_boil_beans(scene.texts, boil)) {
        return found;
    }
    const bool never_boiled = steps_forbid_boiling(scene.texts);
    for (const auto& read : scene.texts) {
        if (is_cooked_apart(scene.package, read)) {
            continue;
        }
        const auto state = bean_state(read.text, boil);
        if ((never_boiled && state == BeanState::Unclear ? BeanState::Dry : state) == wanted) {
            found.push_back({{read.written}, read.where});
        }
    }
    return found;
}

Findings dry_beans_of_bag(const Scene& scene) {
    return beans(scene, BeanState::Dry);
}

Findings dry_beans(const Scene& scene) {
    auto found = dry_beans_of_bag(scene);
    std::ranges::move(in_sides(scene, dry_beans_of_bag), std::back_inserter(found));
    return found;
}

Findings unclear_beans(const Scene& scene) {
    if (!beans(scene, BeanState::Safe).empty() || !dry_beans(scene).empty()) {
        return {}; // settled: those that were named are canned, or refused
    }
    const auto found = beans(scene, BeanState::Unclear);
    return found.empty() ? found : Findings{found.front()}; // the same words twice help nobody
}

constexpr CautionRule slow_cooker_rows[] = {
    refusal("slow-cooker-warm", "Iowa State University Extension, Slow cookers", warm_only,
            "\"{0}\" only keeps food hot, it does not cook; expected a setting such as \"low\" or "
            "\"high\""),
    refusal("beans-dry", bean_source, dry_beans,
            "\"{0}\" in a slow cooker, a low oven or a pot below the boil can poison: it never "
            "gets hot enough to "
            "destroy the toxin of dried beans",
            "soak them 5 h, drain, and boil them 30 min in fresh water before they go in; then "
            "write it: \"beans, boiled 30 min\"; or take canned ones"),
    {"beans-unclear", CautionLevel::LabelAndCard, bean_source, unclear_beans,
     "BOIL DRY BEANS 30 MIN BEFORE SLOW COOKER"},
    refusal(
        "slow-cooker-stuffed", "USDA FSIS, Slow Cookers and Food Safety (from memory)",
        stuffed_bird,
        "\"{0}\": a stuffed bird must not be cooked in a slow cooker, its middle warms too slowly",
        "cook the stuffing apart, in a dish in the oven"),
    {"slow-cooker-fill", CautionLevel::Card, slow_cooker_safety, filling},
    {"slow-cooker-reheating", CautionLevel::LabelAndCard, slow_cooker_safety, reheating,
     "IF COOKED BEFORE HEAT TO {0} FIRST"},
    {"slow-cooker-step-frozen", CautionLevel::Check, slow_cooker_safety, step_says_frozen},
    {"oven-cool", CautionLevel::Report, "FoodSafety.gov, Meat and Poultry Roasting Charts",
     raw_in_cool_oven},
};

} // namespace

bool scene::is_surely_cooked(const Scene& scene) {
    return !holds_raw(scene) && (holds(scene, {FoodKind::Leftover, FoodKind::InfantFood}) ||
                                 is_said_cooked(scene.package));
}

std::span<const CautionRule> slow_cooker_rules() {
    return slow_cooker_rows;
}

} // namespace thawslip::kitchen

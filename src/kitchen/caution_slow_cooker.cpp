#include "kitchen/caution_topics.h"
#include "kitchen/phrases.h"
#include "kitchen/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view slow_cookers =
    "USDA FSIS, Slow Cookers and Food Safety (read in a copy)";
constexpr std::string_view bean_source =
    "FDA, Bad Bug Book, phytohaemagglutinin; Food Safety Information Council (Australia), Slow "
    "cookers";

bool is_slow_cooker(const Scene& scene) {
    return is_in(scene.package, Vessel::SlowCooker);
}

Findings step_says_frozen(const Scene& scene) {
    static const PhraseBook book{{"from frozen", "still frozen", "while frozen", "frozen block",
                                  "frozen bag", "frozen stew", "frozen soup", "from the freezer",
                                  "out of the freezer", "without thawing"}};
    Findings found;
    if (!is_slow_cooker(scene)) {
        return found;
    }
    const auto& steps = scene.package.cook->steps;
    for (std::size_t i = 0; i < steps.size(); ++i) {
        const auto words = words_of(steps[i]);
        if (!book.find(words).empty() && !says_any(words, {"never", "not", "dont"})) {
            found.push_back({{steps[i]}, cook_place(scene, "steps").index(i)});
        }
    }
    return found;
}

/// A dish cooked for certain; or one that may be, in the cooker for too short to cook it raw.
bool is_reheated(const Scene& scene) {
    constexpr std::chrono::minutes too_short_to_cook{180};
    if (holds_raw(scene)) {
        return false;
    }
    const auto& time = scene.package.cook->time;
    return holds(scene, {FoodKind::Leftover}) ||
           (holds(scene, {FoodKind::CookedDish, FoodKind::EggDish}) && time &&
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

Findings warm_setting(const Scene& scene) {
    if (!is_slow_cooker(scene)) {
        return {};
    }
    const auto words = words_of(scene.package.cook->setting);
    const bool only_warm = std::ranges::all_of(
        words, [](const std::string& word) { return word == "warm" || word == "keep"; });
    return words.empty() || !only_warm
               ? Findings{}
               : Findings{{{scene.package.cook->setting}, cook_place(scene, "setting")}};
}

Findings filling(const Scene& scene) {
    return is_slow_cooker(scene) ? Findings{{{}, cook_place(scene, "in")}} : Findings{};
}

/// A whole bird with stuffing inside, by its words.
Findings stuffed_bird(const Scene& scene) {
    const auto stuffed = first_named(food_texts(scene.package), stuffed_words());
    return is_slow_cooker(scene) && stuffed && holds(scene, {FoodKind::RawPoultry})
               ? Findings{{{stuffed->text}, stuffed->where}}
               : Findings{};
}

enum class Beans { None, Dry, Unclear, Safe };

/// Red and white kidney beans carry enough of the toxin to make people ill.
Beans kidney_beans(const std::vector<std::string>& words) {
    static const PhraseBook book{{"kidney bean", "cannellini bean", "cannellini"}};
    if (book.find(words).empty()) {
        return Beans::None;
    }
    if (says_any(words, {"canned", "can", "cans", "tin", "tins", "tinned", "jar", "jars", "cooked",
                         "precooked", "boiled"})) {
        return Beans::Safe;
    }
    return says_any(words, {"dry", "dried", "soaked"}) ? Beans::Dry : Beans::Unclear;
}

bool steps_boil_beans(const Package& package) {
    return std::ranges::any_of(package.cook->steps, [](const std::string& step) {
        const auto words = words_of(step);
        return says_any(words, {"boil", "boiled"}) && says_any(words, {"bean", "beans"});
    });
}

Findings beans(const Scene& scene, Beans wanted) {
    Findings found;
    if (!is_slow_cooker(scene) || steps_boil_beans(scene.package)) {
        return found;
    }
    for (const auto& [text, where] : food_texts(scene.package)) {
        if (kidney_beans(words_of(text)) == wanted) {
            found.push_back({{text}, where});
        }
    }
    return found;
}

Findings dry_beans(const Scene& scene) {
    return beans(scene, Beans::Dry);
}

Findings unclear_beans(const Scene& scene) {
    auto found = beans(scene, Beans::Unclear);
    found.resize(std::min<std::size_t>(found.size(), 1)); // the same words twice help nobody
    return found;
}

constexpr CautionRule rules[] = {
    {"slow-cooker-warm", CautionLevel::Refuse,
     "\"{0}\" only keeps food hot, it does not cook; expected a setting such as \"low\" or "
     "\"high\"",
     "", "Iowa State University Extension, Slow cookers", warm_setting},
    {"kidney-beans-dry", CautionLevel::Refuse,
     "\"{0}\" in a slow cooker can poison: the cooker is not hot enough to destroy their toxin",
     "soak them 5 h, drain, and boil them 30 min in fresh water before they go in; then write it: "
     "\"kidney beans, boiled\"",
     bean_source, dry_beans},
    {"kidney-beans-unclear", CautionLevel::LabelAndCard,
     "Kidney beans that were dry must have been soaked, drained and boiled for 30 minutes before "
     "they go into a slow cooker. Canned ones are safe.",
     "", bean_source, unclear_beans, "BOIL DRY BEANS 30 MIN BEFORE SLOW COOKER"},
    {"slow-cooker-stuffed", CautionLevel::Refuse,
     "\"{0}\": a stuffed bird must not be cooked in a slow cooker, its middle warms too slowly",
     "cook the stuffing apart, in a dish in the oven",
     "USDA FSIS, Slow Cookers and Food Safety (from memory)", stuffed_bird},
    {"slow-cooker-fill", CautionLevel::Card,
     "Fill it half to two thirds, and keep the lid on. Was the power cut while you were out? Throw "
     "the food away.",
     "", slow_cookers, filling},
    {"slow-cooker-reheating", CautionLevel::Card,
     "If it was cooked before freezing, first bring it to {0} on the stove, in the oven or in the "
     "microwave: a slow cooker heats too slowly and is only for keeping it hot.",
     "", slow_cookers, reheating, "IF COOKED BEFORE HEAT TO {0} FIRST"},
    {"slow-cooker-step-frozen", CautionLevel::Check,
     "\"{0}\": is that frozen food into a slow cooker? it must be fully thawed first", "",
     slow_cookers, step_says_frozen},
};

} // namespace

std::span<const CautionRule> slow_cooker_rules() {
    return rules;
}

} // namespace thawslip::kitchen

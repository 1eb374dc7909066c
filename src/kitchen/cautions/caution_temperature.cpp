#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/measures/hold_time.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/sources.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/said_degrees.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <cmath>
#include <functional>
#include <span>

namespace thawslip::kitchen {
namespace {

using namespace scene;
using std::chrono::seconds;

constexpr std::string_view temperatures =
    "FoodSafety.gov, Cook to a Safe Minimum Internal Temperature; Health Canada, Safe internal "
    "cooking temperatures (for the list canada); UK Food Standards Agency, Cooking your food (for "
    "the list uk)";
constexpr std::string_view uk_times = "UK Food Standards Agency, Cooking your food";
constexpr std::string_view us_temperatures =
    "FoodSafety.gov, Cook to a Safe Minimum Internal Temperature";

std::optional<SafeMinimum> minimum_of(const Scene& scene) {
    return safe_minimum(scene.table, scene.package);
}

bool is(const std::optional<SafeMinimum>& minimum, std::initializer_list<Matter> matters) {
    return minimum && contains(matters, minimum->matter);
}

double target(const Scene& scene) {
    return scene.package.cook->until->celsius;
}

bool has_reason(const Scene& scene) {
    return scene.package.cook && !scene.package.cook->because.empty();
}

/// The minimum that the target misses; nothing where there is no target or it is high enough.
std::optional<SafeMinimum> missed_minimum(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (!minimum || !has_target(scene) ||
        reaches(target(scene), *minimum, scene.package.cook->hold)) {
        return std::nullopt;
    }
    return minimum;
}

std::string target_text(const Scene& scene) {
    return to_text(*scene.package.cook->until, TemperatureUse::SafeMinimum, style(scene));
}

/// Hot enough where it is held for long enough, which the description does not say.
bool misses_only_time(const Scene& scene, const SafeMinimum& minimum) {
    return minimum.time_counts && needed_hold(target(scene));
}

/// A cooked ham that would be hot enough had it come straight from an inspected plant.
bool is_inspected_ham(const Scene& scene, const SafeMinimum& minimum) {
    constexpr double from_inspected_plant = 60.0;
    return minimum.matter == Matter::CookedHam && minimum.list == MinimumList::Us &&
           !scene.settings.people_at_risk && target(scene) >= from_inspected_plant;
}

Findings below_minimum(const Scene& scene) {
    const auto minimum = missed_minimum(scene);
    if (!minimum || has_reason(scene) || misses_only_time(scene, *minimum) ||
        is_inspected_ham(scene, *minimum)) {
        return {};
    }
    return {{{target_text(scene), minimum_text(scene, *minimum), std::string{minimum->row},
              std::string{minimum->source}},
             cook_place(scene, "until")}};
}

Findings too_short(const Scene& scene) {
    const auto minimum = missed_minimum(scene);
    if (!minimum || has_reason(scene) || !misses_only_time(scene, *minimum)) {
        return {};
    }
    const auto& held = scene.package.cook->hold;
    return {{{target_text(scene), hold_text(*needed_hold(target(scene)))},
             cook_place(scene, held ? "hold" : "until")}};
}

/// What the middle must reach: the cook's target, else the safe minimum.
std::optional<Temperature> needed(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (has_target(scene)) {
        return scene.package.cook->until;
    }
    return minimum ? std::optional{Temperature{static_cast<double>(minimum->celsius)}}
                   : std::nullopt;
}

/// Whether a temperature in a text is one of the food's own middle.
bool is_of_middle(const WordedText& text, const SaidDegrees& degrees) {
    return clause_says(text, degrees.word, Section::Doing, "core") ||
           clause_says(text, degrees.word, Section::Doing, "until");
}

/// The hottest of what surrounds the food: as vessel or setting say; nothing where neither does. A
/// step may raise it.
std::optional<double> hottest_around(const Scene& scene) {
    std::optional<double> set;
    double raised = 0;
    for (const auto& read : scene.texts) {
        const bool of_vessel =
            read.field == FreeText::CookIn || read.field == FreeText::CookSetting;
        for (const auto& degrees : said_degrees(read.text)) {
            const bool counts = of_vessel || read.field == FreeText::Step;
            if (!counts || is_of_middle(read.text, degrees)) {
                continue;
            }
            raised = std::max(raised, degrees.celsius);
            if (of_vessel && degrees.has_unit) {
                set = std::max(set.value_or(degrees.celsius), degrees.celsius);
            }
        }
    }
    return set ? std::optional{std::max(*set, raised)} : std::nullopt;
}

/// Food gets no hotter than what heats it: an oven at 60 °C never brings it to 74.
Findings setting_too_cool(const Scene& scene) {
    constexpr double slack = 1.0; // a degree is lost where one scale is written in the other
    const auto around = hottest_around(scene);
    const auto middle = needed(scene);
    if (!around || !middle || has_reason(scene) || *around + slack >= middle->celsius) {
        return {};
    }
    const auto& cook = *scene.package.cook;
    return {{{cook.setting.empty() ? cook.in : cook.setting,
              to_text(*middle, TemperatureUse::SafeMinimum, style(scene))},
             cook_place(scene, cook.setting.empty() ? "in" : "setting")}};
}

using SaysIt = std::function<bool(const WordedText&, std::span<const SaidDegrees>)>;

/// The steps and notes of whose degrees `says_it` holds, each with what was expected.
Findings said_in_steps(const Scene& scene, const std::string& expected, const SaysIt& says_it) {
    auto found = texts_that(scene, [&](const ReadText& read) {
        const bool tells = read.field == FreeText::Step || read.field == FreeText::Note;
        return tells && says_it(read.text, said_degrees(read.text));
    });
    for (auto& finding : found) {
        finding.values.push_back(expected);
    }
    return found;
}

/// Whether a step's temperature can hardly be that of the vessel, which is hotter or has no dial:
/// "done at 66 °C", "out at 150 °F", "probe: 66 °C".
bool is_of_food(const WordedText& text, const SaidDegrees& degrees) {
    constexpr std::string_view of_else[] = {"preheat", "hot-held", "keep", "cools"};
    return degrees.has_unit && !clause_says(text, degrees.word, Section::Handling, "crockery") &&
           std::ranges::none_of(of_else, [&](std::string_view what) {
               return clause_says(text, degrees.word, Section::Doing, what);
           });
}

/// Whether all that heats is hotter than the minimum, as far as it is said.
bool is_hotter_around(const Scene& scene, const SafeMinimum& minimum) {
    const auto around = hottest_around(scene);
    return around ? *around > minimum.celsius
                  : is_in(scene.package, Vessel::Pan) || is_in(scene.package, Vessel::Grill);
}

/// What a step or a note says of the middle of raw food, where that is not hot enough.
Findings said_below_minimum(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (!minimum || !holds_raw(scene) || has_reason(scene)) {
        return {};
    }
    const bool hotter_around = is_hotter_around(scene, *minimum);
    const auto is_below = [&](const WordedText& text, std::span<const SaidDegrees> degrees) {
        const auto says_enough = [&](const SaidDegrees& each) {
            return is_of_middle(text, each) && reaches(each.celsius, *minimum);
        };
        const auto says_too_little = [&](const SaidDegrees& each) {
            const bool of_middle =
                is_of_middle(text, each) &&
                (each.has_unit || clause_says(text, each.word, Section::Doing, "core"));
            return each.celsius > barely_warm && !reaches(each.celsius, *minimum) &&
                   (of_middle || (hotter_around && is_of_food(text, each)));
        };
        return std::ranges::any_of(degrees, says_too_little) &&
               std::ranges::none_of(degrees, says_enough);
    };
    return said_in_steps(scene, minimum_text(scene, *minimum), is_below);
}

/// Kept warm until it is eaten, and not hot enough.
Findings held_too_cool(const Scene& scene) {
    constexpr double least = 57.0;
    const auto is_held = [](const WordedText& text, std::span<const SaidDegrees> degrees) {
        return std::ranges::any_of(degrees, [&](const SaidDegrees& each) {
            return each.has_unit && each.celsius > barely_warm &&
                   std::round(each.celsius) < least &&
                   clause_says(text, each.word, Section::Doing, "hot-held") &&
                   !clause_says(text, each.word, Section::Doing, "core");
        });
    };
    return is_perishable(scene)
               ? said_in_steps(scene, published_text(135, TemperatureUse::ColdLimit, style(scene)),
                               is_held)
               : Findings{};
}

/// Raw food in a vessel that no rule knows, and whose heat is not said.
Findings unknown_vessel(const Scene& scene) {
    const auto& cook = scene.package.cook;
    const bool unknown = cook && cook->vessel == Vessel::Other && !cook->in.empty();
    return unknown && holds_raw(scene) && !hottest_around(scene)
               ? Findings{{{cook->in}, cook_place(scene, "in")}}
               : Findings{};
}

Findings ham_below_minimum(const Scene& scene) {
    const auto minimum = missed_minimum(scene);
    if (!minimum || has_reason(scene) || !is_inspected_ham(scene, *minimum)) {
        return {};
    }
    return {{{target_text(scene), minimum_text(scene, *minimum)}, cook_place(scene, "until")}};
}

Findings below_minimum_with_reason(const Scene& scene) {
    const auto minimum = missed_minimum(scene);
    if (!minimum || !has_reason(scene)) {
        return {};
    }
    return {{{target_text(scene), minimum_text(scene, *minimum), scene.package.cook->because},
             cook_place(scene, "because")}};
}

/// Shells, thin slices and beaten eggs are hard to measure in; their own cautions say what to look
/// for.
bool is_judged_by_eye(const std::optional<SafeMinimum>& minimum) {
    return is(minimum, {Matter::RawShellfish, Matter::Bacon, Matter::RawEgg});
}

bool needs_target(const Scene& scene, const std::optional<SafeMinimum>& minimum) {
    return holds_raw(scene) && scene.package.cook && !is_judged_by_eye(minimum);
}

Findings raw_without_target(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    if (!minimum || has_target(scene) || has_reason(scene) || !needs_target(scene, minimum)) {
        return {};
    }
    return {{{minimum_text(scene, *minimum)}, scene.package.cook->where}};
}

/// What its maker has cooked may be eaten cold, but not by people at risk; vegetables and shellfish
/// have a caution of their own.
bool is_said_elsewhere(const Scene& scene, const std::optional<SafeMinimum>& minimum) {
    const bool ready = is(minimum, {Matter::ReadyToEat, Matter::CookedHam});
    return is(minimum, {Matter::Vegetable, Matter::RawShellfish}) ||
           (ready && !scene.package.cook && !scene.settings.people_at_risk);
}

/// A cooked dish of which a step says so, where nobody is at risk.
bool is_served_cold(const Scene& scene) {
    return !scene.settings.people_at_risk && !holds_raw(scene) &&
           std::ranges::any_of(scene.texts, [](const ReadText& read) {
               return read.field == FreeText::Step &&
                      is_meant(read.text, mentions(read.text, Section::Handling, "served cold"));
           });
}

/// Whether the print itself has to say how hot: a cooked dish without a target, or a raw one
/// without any cooking instructions, is no mistake.
bool says_minimum(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    return minimum && !has_target(scene) && !has_reason(scene) && !needs_target(scene, minimum) &&
           !is_said_elsewhere(scene, minimum) && !is_served_cold(scene);
}

Findings without_target(const Scene& scene) {
    return says_minimum(scene)
               ? Findings{{{minimum_text(scene, *minimum_of(scene))}, cook_place(scene, "until")}}
               : Findings{};
}

Findings no_target_with_reason(const Scene& scene) {
    if (!minimum_of(scene) || has_target(scene) || !has_reason(scene)) {
        return {};
    }
    return {{{scene.package.cook->because}, cook_place(scene, "because")}};
}

/// Whole cuts are safe at 145 °F only with their rest; at the temperature of ground meat they
/// need none.
Findings rest(const Scene& scene) {
    constexpr double needs_no_rest_celsius = 71.0;
    const auto minimum = minimum_of(scene);
    const bool is_low =
        has_target(scene) ? target(scene) < needs_no_rest_celsius : says_minimum(scene);
    if (!minimum || minimum->rest.count() == 0 || !is_low) {
        return {};
    }
    return {{{std::to_string(minimum->rest.count())}, cook_place(scene, "until")}};
}

Findings hold_between(const Scene& scene, seconds least, seconds below) {
    const auto time = holding(scene);
    if (!time || *time < least || *time >= below) {
        return {};
    }
    return {{{hold_text(*time)}, cook_place(scene, "until")}};
}

Findings hold(const Scene& scene) {
    return hold_between(scene, std::chrono::minutes{1}, seconds::max());
}

/// Six seconds are over before a thermometer has been read.
Findings hold_briefly(const Scene& scene) {
    return hold_between(scene, seconds{10}, std::chrono::minutes{1});
}

Findings microwave(const Scene& scene) {
    return found_if(is_in(scene.package, Vessel::Microwave) && minimum_of(scene),
                    cook_place(scene, "in"));
}

constexpr CautionRule temperature_rows[] = {
    refusal("target-below-minimum", temperatures, below_minimum,
            "{0} is below the safe minimum for what is inside, {1} in the middle (\"{2}\", {3})",
            "raise it, or say why it is right here: because = \"…\""),
    refusal("hold-too-short", uk_times, too_short,
            "{0} in the middle is safe only where it stays that hot for {1}",
            "raise it, or say how long it stays that hot: hold = \"…\""),
    refusal("ham-below-minimum", us_temperatures, ham_below_minimum,
            "{0} is enough only for cooked ham that was packed in an inspected plant and has "
            "stayed in that pack; expected {1} in the middle",
            "raise it, or say so: because = \"packed in an inspected plant\""),
    refusal("raw-without-target", temperatures, raw_without_target,
            "raw food is cooked without a target temperature; expected {0} in the middle or more",
            "add until = \"…\" below [package.cook], or say why there is none: because = \"…\""),
    refusal("setting-too-cool", practice, setting_too_cool,
            "\"{0}\" never brings the middle to {1}: food gets no hotter than what heats it",
            "raise the setting, or say why it is right here: because = \"…\""),
    {"step-below-minimum", CautionLevel::Report, temperatures, said_below_minimum},
    {"held-too-cool", CautionLevel::Report,
     "FDA Food Code 3-501.16, Time/Temperature Control for Safety Food, Hot and Cold Holding (from "
     "memory)",
     held_too_cool},
    {"vessel-unknown", CautionLevel::Report, slow_cooker_safety, unknown_vessel},
    {"target-missing", CautionLevel::LabelAndCard, temperatures, without_target,
     "HEAT MIDDLE TO {0}"},
    {"target-below-minimum-with-reason", CautionLevel::LabelAndCard, temperatures,
     below_minimum_with_reason, "BELOW USUAL SAFE MINIMUM OF {1}"},
    {"no-target-with-reason", CautionLevel::Card, temperatures, no_target_with_reason},
    {"rest", CautionLevel::LabelAndCard, us_temperatures, rest, "REST {0} MIN BEFORE CUTTING"},
    {"hold", CautionLevel::LabelAndCard, uk_times, hold, "KEEP IT THAT HOT FOR {0}"},
    {"hold-briefly", CautionLevel::LabelAndCard, uk_times, hold_briefly,
     "KEEP IT THAT HOT FOR {0}"},
    {"microwave-stand", CautionLevel::Card,
     "FDA Food Code 3-401.12 and 3-403.11, Microwave Cooking; Reheating for Hot Holding", microwave,
     "COVER - STIR HALFWAY - STAND 2 MIN"},
};

} // namespace

std::optional<seconds> holding(const Scene& scene) {
    const auto minimum = minimum_of(scene);
    const auto written = scene.package.cook ? scene.package.cook->hold : std::nullopt;
    const bool counts = minimum && minimum->time_counts && !missed_minimum(scene) &&
                        (has_target(scene) || says_minimum(scene));
    if (!counts) {
        return written;
    }
    const auto needed = needed_hold(has_target(scene) ? target(scene) : minimum->celsius);
    return std::max(written.value_or(seconds{0}), needed.value_or(seconds{0}));
}

std::span<const CautionRule> temperature_rules() {
    return temperature_rows;
}

} // namespace thawslip::kitchen

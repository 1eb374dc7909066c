#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cooking/gentle_heat.h"
#include "kitchen/foods/foods_named.h"
#include "kitchen/measures/temperature.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/sources.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/sentences.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view altitude_source = "USDA FSIS, Cooking at High Altitude";
constexpr std::string_view risk_source =
    "CDC, Tips for preventing Listeria food poisoning, 2014; Health Canada, food safety for "
    "vulnerable populations";
constexpr std::string_view pregnancy_source =
    "NHS, Foods to avoid in pregnancy (read in a copy); Food Standards Agency";

constexpr double feet_in_metre = 1.0 / 0.3048;
constexpr double high_altitude_feet = 3000.0;

double feet(const Scene& scene) {
    return scene.settings.altitude_metres * feet_in_metre;
}

bool is_high(const Scene& scene) {
    // A metre of slack: 3000 ft is 914.4 m, which people write as 914.
    return feet(scene) + feet_in_metre >= high_altitude_feet;
}

std::string altitude_text(const Scene& scene) {
    constexpr double step = 10; // feet, about as close as the metres that people know
    const auto metres = fmt::format("{} m", std::lround(scene.settings.altitude_metres));
    const auto in_feet = fmt::format("{:.0f} ft", std::round(feet(scene) / step) * step);
    return scene.settings.measures == Measures::Us ? in_style(in_feet, metres, false, style(scene))
                                                   : in_style(metres, in_feet, true, style(scene));
}

/// Water boils at 212 °F less 0.0018 °F for every foot: Colorado State University Extension,
/// High Altitude Food Preparation (203 °F at 5000 ft).
double boiling_fahrenheit(const Scene& scene) {
    return 212.0 - 0.0018 * feet(scene);
}

std::string boiling_text(const Scene& scene) {
    return published_text(std::round(boiling_fahrenheit(scene)), TemperatureUse::ColdLimit,
                          style(scene));
}

/// What is cooked in water or its steam gets no hotter than the water.
Findings above_boiling(const Scene& scene) {
    constexpr double slack = 1.0; // a degree is lost where one scale is written in the other
    const bool in_water =
        is_in(scene.package, Vessel::Pot) || is_in(scene.package, Vessel::Steamer);
    if (!is_high(scene) || !in_water || !has_target(scene) ||
        !scene.package.cook->because.empty() ||
        scene.package.cook->until->celsius <= to_celsius(boiling_fahrenheit(scene)) + slack) {
        return {};
    }
    return {{{to_text(*scene.package.cook->until, TemperatureUse::SafeMinimum, style(scene)),
              altitude_text(scene), boiling_text(scene)},
             cook_place(scene, "until")}};
}

Findings simmering_high_up(const Scene& scene) {
    const bool simmers = is_in(scene.package, Vessel::Pot) || is_in(scene.package, Vessel::Pan) ||
                         is_in(scene.package, Vessel::Steamer);
    return found_if(is_high(scene) && simmers, cook_place(scene, "in"),
                    {altitude_text(scene), boiling_text(scene)});
}

Findings slow_cooker_high_up(const Scene& scene) {
    const bool slow_cooker =
        is_in(scene.package, Vessel::SlowCooker) && !is_no_slow_cooker(scene.package.cook->in);
    return found_if(is_high(scene) && slow_cooker, cook_place(scene, "in"), {altitude_text(scene)});
}

bool comes_late(const Finish& finish) {
    return finish.when.anchor == When::Anchor::AtServing ||
           finish.when.anchor == When::Anchor::BeforeEnd;
}

std::string steaming_hot(const Scene& scene) {
    return published_text(165, TemperatureUse::SafeMinimum, style(scene));
}

/// Ready to eat as it comes, by its kind or because it is smoked: "smoked duck" may be raw or not.
bool names_ready_to_eat(const Scene& scene, const Package& added, const std::string& words) {
    const bool smoked = says(worded(words), Section::Dish, "cures");
    return std::ranges::any_of(foods_named(scene.table, added), [&](const NamedFood& named) {
        return any_of_kinds(scene, smoked ? named.may_be : named.kinds, {FoodKind::ReadyToEat});
    });
}

/// What comes on the plate cold, such as ham.
Findings added_cold_at_risk(const Scene& scene) {
    Findings found;
    if (!scene.settings.people_at_risk) {
        return found;
    }
    for (const auto& finish : scene.package.finish) {
        if (comes_late(finish) && names_ready_to_eat(scene, alone(finish), text_of(finish.add))) {
            found.push_back({{text_of(finish.add), steaming_hot(scene)}, finish.where.key("add")});
        }
    }
    for (const auto& side : scene.package.sides) {
        if (names_ready_to_eat(scene, alone(side), text_of(side.add))) {
            found.push_back({{text_of(side.add), steaming_hot(scene)}, side.where.key("add")});
        }
    }
    return found;
}

/// Tartare, carpaccio, ceviche: what is added late, or beside it, to be eaten raw.
Findings eaten_raw_at_risk(const Scene& scene) {
    std::vector<Package> added;
    for (const auto& finish : scene.package.finish) {
        if (comes_late(finish)) {
            added.push_back(alone(finish));
        }
    }
    for (const auto& side : scene.package.sides) {
        added.push_back(alone(side));
    }
    const auto is_eaten_raw = [&](const Package& package) {
        return std::ranges::any_of(foods_named(scene.table, package), [](const NamedFood& named) {
            return is_one_of(named.kinds.front(), {"meat to be eaten raw", "fish to be eaten raw"});
        });
    };
    const auto found = std::ranges::find_if(added, is_eaten_raw);
    return scene.settings.people_at_risk && found != added.end()
               ? Findings{{{}, found->where.key("add")}}
               : Findings{};
}

/// Smoked fish is only safe for them inside a cooked dish; cold cuts only when steaming hot.
Findings ready_to_eat_at_risk(const Scene& scene) {
    return found_if(scene.settings.people_at_risk && holds(scene, {FoodKind::ReadyToEat}),
                    food_place(scene), {steaming_hot(scene)});
}

Findings low_target_at_risk(const Scene& scene) {
    const auto minimum = safe_minimum(scene.table, scene.package);
    const auto& cook = scene.package.cook;
    if (!scene.settings.people_at_risk || !minimum || !cook || cook->because.empty() ||
        (cook->until && reaches(cook->until->celsius, *minimum))) {
        return {};
    }
    return {{{}, cook_place(scene, "because")}};
}

/// Hot enough to kill what makes these foods a risk: the agencies' 165 °F.
bool is_cooked_hot(const Package& package) {
    constexpr double celsius = 73.9;
    return package.cook && package.cook->until && package.cook->until->celsius >= celsius;
}

void add_sides(std::vector<PlacedText>& texts, const Package& package) {
    for (const auto& side : package.sides) {
        texts.push_back({text_of(side.add), side.where.key("add")});
    }
}

/// Whatever names food that is eaten, and the note.
std::vector<PlacedText> texts_of_meal(const Package& package) {
    auto texts = food_texts(package);
    texts.push_back({package.note, package.where.key("note")});
    add_sides(texts, package);
    return texts;
}

/// What may be eaten without having been hot: all of a dish that is not, else what is added late;
/// and what is served beside it, of which nobody says how hot it gets.
std::vector<PlacedText> texts_not_heated(const Package& package) {
    if (!is_cooked_hot(package)) {
        return texts_of_meal(package);
    }
    std::vector<PlacedText> texts;
    for (const auto& finish : package.finish) {
        if (comes_late(finish)) {
            texts.push_back({text_of(finish.add), finish.where.key("add")});
        }
    }
    add_sides(texts, package);
    return texts;
}

/// Where the people who eat are at risk and a food that the words name is not heated through.
template <Word food>
Findings at_risk(const Scene& scene) {
    const auto named = scene.settings.people_at_risk
                           ? first_named(texts_not_heated(scene.package), Section::Risk, food)
                           : std::nullopt;
    return named ? Findings{{{}, named->where}} : Findings{};
}

Findings smoked_fish(const Scene& scene) {
    auto found = at_risk<"smoked fish">(scene);
    for (const auto& text : texts_not_heated(scene.package)) {
        if (found.empty() && scene.settings.people_at_risk && names_cured_fish(scene, text.text)) {
            found.push_back({{}, text.where});
        }
    }
    return found;
}

/// The same of what no heat makes better: wherever it is named, cooked through or not.
template <Word food>
Findings at_risk_however_hot(const Scene& scene) {
    if (!scene.settings.people_at_risk) {
        return {};
    }
    const auto named = first_named(texts_of_meal(scene.package), Section::Risk, food);
    return named ? Findings{{{}, named->where}} : Findings{};
}

/// Liver and what is made of it, rich in vitamin A; of a pâté that is not for them anyway it is
/// not said too.
Findings liver(const Scene& scene) {
    return at_risk<"pate">(scene).empty() ? at_risk_however_hot<"liver">(scene) : Findings{};
}

Findings raw_milk(const Scene& scene) {
    for (const auto& text : texts_not_heated(scene.package)) {
        if (scene.settings.people_at_risk &&
            !phrase_book(Section::Risk, "raw milk").find(words_of(text.text)).empty()) {
            return {{{}, text.where}}; // "without pasteurising" is no denial here
        }
    }
    return {};
}

/// "Oat mush, 8 months": the age of a child that is not one year old.
bool says_infants_age(const WordedText& text) {
    constexpr double months_of_year = 12;
    const auto months = mentions(text, Section::People, "months");
    return std::ranges::any_of(months, [&](const Mention& each) {
        const auto age = each.first > 0 ? number_at(text, each.first - 1) : std::nullopt;
        return age && *age < months_of_year;
    });
}

bool is_for_infants(const Package& package) {
    const std::vector<PlacedText> texts{{package.dish, {}}, {package.note, {}}};
    return first_named(texts, Section::Risk, "infants") || says_infants_age(worded(package.dish));
}

bool names_honey(const ReadText& read) {
    const bool is_read =
        names_food(read.field) || read.field == FreeText::Note || read.field == FreeText::Step;
    return is_read && is_named(read.text, mentions(read.text, Section::People, "honey"));
}

Findings honey(const Scene& scene) {
    const bool infants = is_for_infants(scene.package) || holds_class(scene, "infant food");
    if (!scene.settings.people_at_risk && !infants) {
        return {};
    }
    const auto named = std::ranges::find_if(scene.texts, names_honey);
    return named == scene.texts.end() ? Findings{} : Findings{{{}, named->where}};
}

/// Hot enough to be safe is far too hot for a baby's mouth, and a microwave leaves hot spots.
Findings infant_cools(const Scene& scene) {
    const bool heated = scene.package.cook && is_perishable(scene) && is_for_infants(scene.package);
    return found_if(heated || holds(scene, {FoodKind::InfantFood}), food_place(scene));
}

/// What is said of such food as a whole, where nothing is said of the very one.
Findings other_ready_to_eat(const Scene& scene) {
    return smoked_fish(scene).empty() && at_risk<"pate">(scene).empty()
               ? ready_to_eat_at_risk(scene)
               : Findings{};
}

/// Where people at risk are named: what is printed is no doctor's word. The card alone says so
/// where the label names none.
Findings no_medical_advice(const Scene& scene);
Findings no_medical_advice_of_card(const Scene& scene);

constexpr CautionRule people_rows[] = {
    {"risk-low-target", CautionLevel::LabelAndCard, risk_source, low_target_at_risk,
     "NOT FOR PREGNANT - YOUNG - OLD - ILL"},
    {"risk-ready-to-eat", CautionLevel::Card, risk_source, other_ready_to_eat},
    {"risk-addition", CautionLevel::Card, risk_source, added_cold_at_risk},
    {"risk-honey", CautionLevel::LabelAndCard,
     "INSPQ (Quebec), From Tiny Tot to Toddler, Honey: never for babies under age 1", honey,
     "NOT FOR CHILDREN UNDER 12 MONTHS"},
    {"infant-cools", CautionLevel::Card,
     "NHS, Your baby's first solid foods; New Zealand Ministry of Health, Making your own baby "
     "food (from memory)",
     infant_cools, "STIR - COOL TO LUKEWARM - TEST - FEED"},
    {"risk-smoked-fish", CautionLevel::LabelAndCard,
     "Food Standards Agency and Food Standards Scotland, Advice on ready-to-eat smoked fish (read "
     "in a copy)",
     smoked_fish, "PREGNANT - OLD - ILL - STEAM IT THROUGH"},
    {"risk-raw-egg", CautionLevel::LabelAndCard, pregnancy_source, at_risk<"raw egg">,
     "NOT FOR PREGNANT - YOUNG - OLD - ILL"},
    {"risk-soft-cheese", CautionLevel::LabelAndCard, pregnancy_source, at_risk<"soft cheese">,
     "PREGNANT - YOUNG - OLD - ILL - STEAM IT"},
    {"risk-raw-milk", CautionLevel::LabelAndCard, pregnancy_source, raw_milk,
     "NOT FOR PREGNANT - YOUNG - OLD - ILL"},
    {"risk-pate", CautionLevel::LabelAndCard, pregnancy_source, at_risk<"pate">,
     "NOT FOR PREGNANT - YOUNG - OLD - ILL"},
    {"risk-liver", CautionLevel::LabelAndCard,
     "NHS, Foods to avoid in pregnancy: liver, for its vitamin A (from memory)", liver,
     "NOT FOR PREGNANT - LIVER - VITAMIN A"},
    {"risk-mercury", CautionLevel::LabelAndCard,
     "NHS, Foods to avoid in pregnancy: shark, swordfish, marlin; FDA and EPA, Advice about Eating "
     "Fish: choices to avoid; AESAN (Spain), mercury in fish: swordfish, bluefin tuna, shark, pike "
     "(all from memory)",
     at_risk_however_hot<"mercury">, "NOT FOR PREGNANT - YOUNG - MERCURY"},
    {"risk-eaten-raw", CautionLevel::LabelAndCard, pregnancy_source, eaten_raw_at_risk,
     "NOT FOR PREGNANT - YOUNG - OLD - ILL"},
    {"risk-berries", CautionLevel::LabelAndCard,
     "Food Safety Authority of Ireland, Berries: advice to boil imported frozen berries",
     at_risk<"berries">, "PREGNANT - YOUNG - OLD - ILL - BOIL IT"},
    {"risk-sprouts", CautionLevel::LabelAndCard,
     "FoodSafety.gov, Sprouts: What You Should Know (from memory)", at_risk<"sprouts">,
     "PREGNANT - YOUNG - OLD - ILL - COOK IT"},
    {"no-medical-advice", CautionLevel::LabelAndCard, practice, no_medical_advice},
    {"no-medical-advice-of-card", CautionLevel::Card, practice, no_medical_advice_of_card},
    refusal("target-above-boiling",
            "Colorado State University Extension, High Altitude Food "
            "Preparation",
            above_boiling,
            "{0} in the middle is never reached in a pot at {1}: water boils at about {2} there",
            "lower it, or say why it is right here: because = \"…\""),
    {"high-altitude", CautionLevel::Card, altitude_source, simmering_high_up},
    {"high-altitude-slow-cooker", CautionLevel::Card,
     "Colorado State University Extension, High Altitude Food Preparation", slow_cooker_high_up,
     "RUN ON HIGH FOR THE FIRST HOUR"},
};

/// The first place where a rule of this level names people at risk.
Findings names_people(const Scene& scene, CautionLevel level) {
    for (const auto& rule : people_rows) {
        if (rule.level == level && rule.id.starts_with("risk-")) {
            if (auto found = rule.find(scene); !found.empty()) {
                return {{{}, std::move(found.front().where)}};
            }
        }
    }
    return {};
}

Findings no_medical_advice(const Scene& scene) {
    return holds(scene, {FoodKind::InfantFood}) ? Findings{{{}, food_place(scene)}}
                                                : names_people(scene, CautionLevel::LabelAndCard);
}

Findings no_medical_advice_of_card(const Scene& scene) {
    return no_medical_advice(scene).empty() ? names_people(scene, CautionLevel::Card) : Findings{};
}

} // namespace

std::span<const CautionRule> people_rules() {
    return people_rows;
}

} // namespace thawslip::kitchen

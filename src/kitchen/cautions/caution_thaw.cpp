#include "base/list.h"
#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cautions/thaw_places.h"
#include "kitchen/measures/temperature_text.h"
#include "kitchen/sources.h"
#include "kitchen/storage/chilled_wait.h"
#include "kitchen/texts/negation.h"
#include "kitchen/texts/sentences.h"

#include <algorithm>
#include <iterator>
#include <utility>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view uk_freezing =
    "UK Food Standards Agency, How to chill, freeze and defrost food safely";
constexpr std::string_view vacuum_source =
    "FDA Food Code 3-501.13(E), Thawing (read as Wisconsin adopted it, ATCP 75, 2016); FDA, Fish "
    "and Fishery Products Hazards and Controls Guidance";

bool thaws_fast(const Scene& scene) {
    const auto method = scene.package.thaw.method;
    return method == ThawMethod::ColdWater || method == ThawMethod::Microwave;
}

Findings cook_at_once(const Scene& scene) {
    return found_if(thaws_fast(scene) && is_perishable(scene), method_place(scene));
}

Findings refreeze_after_cooking(const Scene& scene) {
    return scene.table.rule_set != "uk" ? cook_at_once(scene) : Findings{};
}

Findings refreeze_never(const Scene& scene) {
    return found_if(scene.table.rule_set == "uk" && is_perishable(scene) &&
                        scene.package.thaw.method != ThawMethod::FromFrozen,
                    method_place(scene));
}

/// What drips from thawing food must not reach what is eaten as it is.
Findings on_a_plate(const Scene& scene) {
    return found_if(scene.package.thaw.method == ThawMethod::Refrigerator && is_perishable(scene),
                    method_place(scene));
}

bool thaws_in_water(const Scene& scene) {
    return scene.package.thaw.method == ThawMethod::ColdWater;
}

Findings cold_water(const Scene& scene) {
    if (!thaws_in_water(scene)) {
        return {};
    }
    return {
        {{published_text(70, TemperatureUse::ColdLimit, style(scene)), "30"}, method_place(scene)}};
}

/// "On the counter overnight", in whatever field; but not "never on the counter", and not of bread
/// and what else keeps as well there.
Findings room_temperature(const Scene& scene) {
    return texts_that(scene, [&](const ReadText& read) {
        const bool in_heat =
            scene.package.thaw.method != ThawMethod::FromFrozen && thaws_in_heat(read);
        const bool raw = holds_raw(scene);
        const bool spoils =
            is_perishable(scene) && (thaws_warm(read, raw) || stands_too_long(read, raw));
        return spoils || in_heat;
    });
}

/// "In den Froster", "al congelador", "put it in the freezer"; not "from the freezer".
bool goes_into(const WordedText& text, const Mention& freezer) {
    constexpr std::size_t reach = 2;
    const auto first = freezer.first - std::min(freezer.first, reach);
    return std::any_of(text.words.begin() + static_cast<std::ptrdiff_t>(first),
                       text.words.begin() + static_cast<std::ptrdiff_t>(freezer.first),
                       [](const std::string& word) {
                           return is_one_of(word, {"in", "into", "to", "ins", "im", "en", "al"});
                       });
}

/// What freezes, where its clause says "again" or speaks of what is left.
std::vector<Mention> freezings_again(const WordedText& text) {
    auto all = mentions(text, Section::Thawing, "freezes");
    std::ranges::copy_if(mentions(text, Section::Thawing, "frozen"), std::back_inserter(all),
                         [&](const Mention& each) { return goes_into(text, each); });
    std::erase_if(all, [&](const Mention& each) {
        return !clause_says(text, each.first, Section::Handling, "anew") &&
               !clause_says(text, each.first, Section::Handling, "remains");
    });
    return all;
}

/// "What is left goes back into the freezer".
Findings frozen_again(const Scene& scene) {
    return said_of_handling(scene, [](const ReadText& read) {
        return is_meant(read.text, mentions(read.text, Section::Thawing, "again")) ||
               std::ranges::any_of(read.sentences, [](const WordedText& text) {
                   return is_meant(text, freezings_again(text));
               });
    });
}

/// A place for thawing that is neither known to be cold nor to be warm.
Findings unknown_place(const Scene& scene) {
    return said_of_handling(scene, thaws_somewhere);
}

/// "Leave the rice in its pot overnight to cool".
Findings cools_too_long(const Scene& scene) {
    return said_of_handling(scene, cools_outside);
}

bool says_vacuum(const Scene& scene) {
    return says_anywhere(scene, Section::Pack, "vacuum");
}

bool is_vacuum_fish(const Scene& scene) {
    const bool fish = holds(scene, {FoodKind::RawFish}) || holds_class(scene, "smoked fish") ||
                      holds_class(scene, "cooked fish");
    return fish && says_vacuum(scene);
}

Findings vacuum_fish(const Scene& scene) {
    return found_if(is_vacuum_fish(scene) && !thaws_in_water(scene), method_place(scene));
}

/// In water it stays sealed, and comes out of the pack at once when that is done.
Findings vacuum_fish_in_water(const Scene& scene) {
    return found_if(is_vacuum_fish(scene) && thaws_in_water(scene), method_place(scene));
}

bool is_perhaps_vacuum_fish(const Scene& scene) {
    return holds(scene, {FoodKind::RawFish}) && !says_vacuum(scene);
}

Findings perhaps_vacuum_fish(const Scene& scene) {
    return found_if(is_perhaps_vacuum_fish(scene) && !thaws_in_water(scene) &&
                        scene.package.thaw.method != ThawMethod::FromFrozen,
                    method_place(scene));
}

Findings perhaps_vacuum_fish_in_water(const Scene& scene) {
    return found_if(is_perhaps_vacuum_fish(scene) && thaws_in_water(scene), method_place(scene));
}

/// The days that the label gives a package once it has thawed.
std::optional<DaysLeft> days_left(const Scene& scene, const Package& package) {
    const auto packing_day = scene.packing_day.value_or(scene.made);
    return keeps_thawed(package, packing_day, scene.table, scene.settings.thaw);
}

Findings no_days_left(const Scene& scene) {
    const auto left = days_left(scene, scene.package);
    const bool said = holds(scene, {FoodKind::InfantFood}); // by a caution of its own
    if (!left || left->low.count() > 0 || said) {
        return {};
    }
    return {{{}, scene.package.where.key("days_refrigerated")}};
}

/// How many are said of a unit of time: by figures, or by a word; one where neither stands there.
double how_many(const WordedText& text, const Mention& unit) {
    constexpr std::pair<std::string_view, double> words[] = {
        {"two", 2}, {"three", 3}, {"four", 4}, {"five or more", 5}};
    for (const auto& said : mentions(text, Section::Doing)) {
        const auto word =
            std::ranges::find(words, said.meaning, &std::pair<std::string_view, double>::first);
        if (said.first + said.count == unit.first && word != std::end(words)) {
            return word->second;
        }
    }
    const auto number = unit.first > 0 ? number_at(text, unit.first - 1) : std::nullopt;
    return number.value_or(1);
}

/// Whether the clause is about keeping food, and not about how long it is frozen or rises. More
/// than a month, and whole months, are meant for the freezer where no refrigerator is named.
bool keeps_so_long(const WordedText& text, const Mention& unit, double days) {
    constexpr double month = 31;
    const auto says_there = [&](Section section, std::string_view meaning) {
        return clause_says(text, unit.first, section, meaning);
    };
    const bool is_short = days <= month && unit.meaning != "months";
    return says_there(Section::Doing, "keeps") && !says_there(Section::Thawing, "frozen") &&
           !says_there(Section::Thawing, "freezes") && !says_there(Section::Thawing, "rising") &&
           (is_short || says_there(Section::Place, "safe"));
}

/// The most days that a text gives food to keep: "keeps ten days", "hält sich eine Woche".
double days_said(const WordedText& text) {
    struct Span {
        Section section;
        std::string_view meaning;
        double days;
    };
    constexpr Span spans[] = {
        {Section::Doing, "days", 1}, {Section::Doing, "weeks", 7}, {Section::People, "months", 30}};
    double most = 0;
    for (const auto& span : spans) {
        for (const auto& unit : mentions(text, span.section, span.meaning)) {
            const auto days = span.days * how_many(text, unit);
            most = std::max(most, keeps_so_long(text, unit, days) ? days : 0);
        }
    }
    return most;
}

/// Words that give thawed food more days than it has in the refrigerator, however it thaws.
Findings kept_too_long(const Scene& scene) {
    auto chilled = scene.package;
    chilled.thaw.method = ThawMethod::Refrigerator;
    const auto left = days_left(scene, chilled);
    if (!left) {
        return {};
    }
    auto found = said_of_handling(scene, [&](const ReadText& read) {
        return days_said(read.text) > static_cast<double>(left->high.count());
    });
    for (auto& finding : found) {
        finding.values.push_back(std::to_string(left->high.count()));
    }
    return found;
}

constexpr CautionRule thaw_rows[] = {
    refusal("thaw-warm", safe_defrosting, room_temperature,
            "\"{0}\" is no safe way to thaw; expected the refrigerator, cold water, the microwave "
            "or cooking from frozen"),
    refusal("cool-too-long", "FDA Food Code 3-501.14, Cooling", cools_too_long,
            "\"{0}\": food that cools for so long outside the refrigerator can poison",
            "cool it to 70 °F (21 °C) within 2 h and to 41 °F (5 °C) within 6 h in all: in shallow "
            "pans or ice water, then in the refrigerator"),
    {"thaw-place-unknown", CautionLevel::Report, safe_defrosting, unknown_place},
    {"days-said", CautionLevel::Report, "USDA FSIS, Leftovers and Food Safety", kept_too_long},
    {"refreeze-said", CautionLevel::Report, safe_defrosting, frozen_again},
    {"thaw-cook-at-once", CautionLevel::LabelAndCard, safe_defrosting, cook_at_once},
    {"thaw-no-days-left", CautionLevel::LabelAndCard,
     "FDA Food Code 3-501.17, Date Marking; Minnesota Rules 4626.0400; USDA FSIS, Leftovers and "
     "Food Safety",
     no_days_left, "COOK ON THE DAY IT HAS THAWED"},
    {"vacuum-packed-fish", CautionLevel::LabelAndCard, vacuum_source, vacuum_fish,
     "OPEN VACUUM PACK BEFORE THAWING"},
    {"vacuum-packed-fish-perhaps", CautionLevel::Card, vacuum_source, perhaps_vacuum_fish,
     "OPEN A VACUUM PACK BEFORE THAWING"},
    {"vacuum-packed-fish-in-water", CautionLevel::LabelAndCard, vacuum_source, vacuum_fish_in_water,
     "OPEN VACUUM PACK ONCE THAWED"},
    {"vacuum-packed-fish-perhaps-in-water", CautionLevel::Card, vacuum_source,
     perhaps_vacuum_fish_in_water, "OPEN A VACUUM PACK ONCE THAWED"},
    {"cold-water-thaw", CautionLevel::Card, safe_defrosting, cold_water},
    {"thaw-on-a-plate", CautionLevel::Card,
     "safefood (Ireland), Defrosting food safely (read in a copy)", on_a_plate},
    {"refreeze-after-cooking", CautionLevel::Card, safe_defrosting, refreeze_after_cooking},
    {"refreeze-never", CautionLevel::Card, uk_freezing, refreeze_never},
};

} // namespace

std::span<const CautionRule> thaw_rules() {
    return thaw_rows;
}

} // namespace thawslip::kitchen

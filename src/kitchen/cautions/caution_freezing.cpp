#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/dish_words.h"
#include "kitchen/foods/food_reading.h"
#include "kitchen/storage/fridge_life.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <optional>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view do_not_freeze_well =
    "Oregon State University Extension, SP 50-766, Foods That Do Not Freeze Well; National Center "
    "for Home Food Preservation, Foods That Do Not Freeze Well";

constexpr std::string_view chilled_source =
    "FDA Food Code 3-501.17, Date Marking; for raw food the refrigerator lists of FoodSafety.gov, "
    "Government of Canada, University of Illinois Extension";

Findings use_by_beyond_list(const Scene& scene) {
    const auto row = shortest_lived(scene.table, scene.package.food);
    if (scene.keep.basis != DateBasis::SetByCook || !row) {
        return {};
    }
    const auto end = high_end(*row, scene.made);
    if (scene.keep.date <= end) {
        return {};
    }
    return {{{to_iso(scene.keep.date), to_iso(end), row->row, row->source},
             scene.package.where.key("use_by")}};
}

KeyPath days_place(const Scene& scene) {
    return scene.package.where.key("days_refrigerated");
}

std::chrono::days spent_chilled(const Scene& scene) {
    return std::chrono::days{scene.package.days_refrigerated};
}

/// The most that can be let pass: the Food Code's week, and for raw food no more than the list
/// that allows most.
std::chrono::days chilled_bound(const Scene& scene) {
    auto bound = food_code_days;
    for (const auto& food : scene.package.food) {
        const auto longest = longest_fridge_life(scene.table, food);
        if (is_raw(kind_of(scene.table, food)) && longest) {
            bound = std::min(bound, *longest);
        }
    }
    return bound;
}

Findings chilled_too_long(const Scene& scene) {
    const auto row =
        shortest_fridge_life(scene.table, foods_kept_chilled(scene.table, scene.package));
    const auto spent = spent_chilled(scene);
    if (!row || spent <= row->high || spent > chilled_bound(scene)) {
        return {};
    }
    return {{{std::to_string(spent.count()), std::to_string(row->high.count()), row->source},
             days_place(scene)}};
}

/// How a dish's name reads that says what cooked food it is, where no `food` is given.
std::optional<FoodChoice> cooked_by_name(const Scene& scene) {
    if (scene.package.food_basis != FoodBasis::Words) {
        return std::nullopt;
    }
    auto reading = read_food(scene.table, scene.package.dish);
    const bool cooked = reading.certainty == FoodCertainty::Sure &&
                        std::ranges::none_of(reading.choices.front(), [&](const auto& kind) {
                            return is_raw_kind(scene.table, kind);
                        });
    return cooked ? std::optional{std::move(reading.choices.front())} : std::nullopt;
}

/// The same where the words of a dish count as raw, and its name says that it is cooked.
Findings cooked_far_too_long(const Scene& scene) {
    const auto cooked = cooked_by_name(scene);
    const auto spent = spent_chilled(scene);
    const auto bound = chilled_bound(scene);
    if (!cooked || !shortest_fridge_life(scene.table, scene.package.food) || spent <= bound) {
        return {};
    }
    return {{{std::to_string(spent.count()), std::to_string(bound.count()), as_toml(*cooked)},
             days_place(scene)}};
}

Findings chilled_far_too_long(const Scene& scene) {
    if (cooked_by_name(scene)) {
        return {};
    }
    const auto spent = spent_chilled(scene);
    const auto bound = chilled_bound(scene);
    if (!shortest_fridge_life(scene.table, scene.package.food) || spent <= bound) {
        return {};
    }
    return {{{std::to_string(spent.count()), std::to_string(bound.count())}, days_place(scene)}};
}

Findings cooked_rice(const Scene& scene) {
    const bool has_rice = std::ranges::any_of(
        foods_kept_chilled(scene.table, scene.package),
        [](const std::string& food) { return same_but_for_case(food, "cooked rice"); });
    return found_if(has_rice, food_place(scene));
}

/// `harm` as src/kitchen/words calls it. Only ingredients are looked at: a dish called "potato
/// soup" may have none left to see.
template <Word harm>
Findings harmed_as(const Scene& scene) {
    Findings found;
    for (const auto& read : scene.texts) {
        if (read.field != FreeText::Ingredient) {
            continue;
        }
        const auto harmed = mentions(read.text, Section::Freezes, harm);
        if (!harmed.empty()) {
            found.push_back({{words_of(read.text, harmed.front())}, read.where});
        }
    }
    return found;
}

constexpr CautionRule freezing_rows[] = {
    refusal("chilled-far-too-long", chilled_source, chilled_far_too_long,
            "{0} days in the refrigerator before freezing; expected {1} at most",
            "food that has stood longer is thrown away; next time freeze it on the day it is "
            "bought, or cook it first and count the days from then"),
    refusal("chilled-far-too-long-raw", chilled_source, cooked_far_too_long,
            "{0} days in the refrigerator before freezing; expected {1} at most, for without food "
            "the words count as raw",
            "if it was cooked, write food = {2}; raw food that has stood longer is thrown away"),
    {"chilled-too-long", CautionLevel::LabelAndCard, "FoodSafety.gov, Cold Food Storage Chart",
     chilled_too_long, "CHILLED {0} DAYS - ADVISED {1}"},
    {"use-by-beyond-list", CautionLevel::Report, "FoodSafety.gov, Cold Food Storage Chart",
     use_by_beyond_list},
    {"rice-cool-fast", CautionLevel::Check,
     "University of Saskatchewan, food safety of rice (Bacillus cereus)", cooked_rice},
    {"freezes-limp", CautionLevel::Check, do_not_freeze_well, harmed_as<"limp">},
    {"freezes-soft", CautionLevel::Check, do_not_freeze_well, harmed_as<"soft">},
    {"freezes-mushy", CautionLevel::Check, do_not_freeze_well, harmed_as<"mushy">},
    {"freezes-rubbery", CautionLevel::Check, do_not_freeze_well, harmed_as<"rubbery">},
    {"freezes-separates", CautionLevel::Check, do_not_freeze_well, harmed_as<"separates">},
    {"freezes-soggy", CautionLevel::Check, do_not_freeze_well, harmed_as<"soggy">},
    {"freezes-weeps", CautionLevel::Check, do_not_freeze_well, harmed_as<"weeps">},
    {"freezes-fades", CautionLevel::Check, do_not_freeze_well, harmed_as<"fades">},
};

} // namespace

std::span<const CautionRule> freezing_rules() {
    return freezing_rows;
}

} // namespace thawslip::kitchen

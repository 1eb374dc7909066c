#include "kitchen/caution_topics.h"
#include "kitchen/fridge_life.h"
#include "kitchen/phrases.h"
#include "kitchen/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using namespace scene;

constexpr std::string_view do_not_freeze_well =
    "Oregon State University Extension, SP 50-766, Foods That Do Not Freeze Well; National Center "
    "for Home Food Preservation, Foods That Do Not Freeze Well";

Findings use_by_beyond_list(const Scene& scene) {
    const auto row = shortest_lived(scene.table, scene.package.food);
    if (scene.keep.basis != DateBasis::SetByCook || !row) {
        return {};
    }
    const auto end = add_months(scene.made, row->high);
    if (scene.keep.date <= end) {
        return {};
    }
    return {{{to_iso(scene.keep.date), to_iso(end), std::to_string(row->high.count()), row->row,
              row->source},
             scene.package.where.key("use_by")}};
}

KeyPath days_place(const Scene& scene) {
    return scene.package.where.key("days_refrigerated");
}

Findings chilled_too_long(const Scene& scene) {
    const auto row = shortest_fridge_life(scene.table, scene.package.food);
    const std::chrono::days spent{scene.package.days_refrigerated};
    if (!row || spent <= row->high || spent > food_code_days) {
        return {};
    }
    return {{{std::to_string(spent.count()), std::to_string(row->high.count()), row->source},
             days_place(scene)}};
}

Findings chilled_over_a_week(const Scene& scene) {
    const std::chrono::days spent{scene.package.days_refrigerated};
    if (!shortest_fridge_life(scene.table, scene.package.food) || spent <= food_code_days) {
        return {};
    }
    return {{{std::to_string(spent.count()), std::to_string(food_code_days.count())},
             days_place(scene)}};
}

Findings cooked_rice(const Scene& scene) {
    const bool has_rice = std::ranges::any_of(scene.package.food, [](const std::string& food) {
        return same_but_for_case(food, "cooked rice");
    });
    return has_rice ? Findings{{{}, scene.package.where.key("food")}} : Findings{};
}

/// What happens to a food in the freezer; each has its own words.
enum class Harm { None, Limp, Soft, Mushy, Rubbery, Separates, Soggy, Weeps, Fades };

struct FreezesBadly {
    std::string_view food;
    Harm harm;
};

constexpr FreezesBadly foods[] = {
    {"lettuce", Harm::Limp},
    {"salad leaves", Harm::Limp},
    {"cucumber", Harm::Limp},
    {"watercress", Harm::Limp},
    {"radish", Harm::Limp},
    {"raw celery", Harm::Limp},
    {"raw cabbage", Harm::Limp},
    {"watermelon", Harm::Limp},
    {"potato", Harm::Soft},
    {"sweet potato", Harm::None},
    {"mashed potato", Harm::None},
    {"potato starch", Harm::None},
    {"potato flour", Harm::None},
    {"cooked pasta", Harm::Mushy},
    {"cooked noodle", Harm::Mushy},
    {"cooked macaroni", Harm::Mushy},
    {"cooked spaghetti", Harm::Mushy},
    {"cooked rice", Harm::Mushy},
    {"cooked egg white", Harm::Rubbery},
    {"boiled egg", Harm::Rubbery},
    {"hard boiled egg", Harm::Rubbery},
    {"hard cooked egg", Harm::Rubbery},
    {"meringue", Harm::Rubbery},
    {"sour cream", Harm::Separates},
    {"custard", Harm::Separates},
    {"custard powder", Harm::None},
    {"cream filling", Harm::Separates},
    {"white sauce", Harm::Separates},
    {"milk sauce", Harm::Separates},
    {"bechamel", Harm::Separates},
    {"mayonnaise", Harm::Separates},
    {"salad dressing", Harm::Separates},
    {"crumb topping", Harm::Soggy},
    {"breadcrumb topping", Harm::Soggy},
    {"cheese topping", Harm::Soggy},
    {"crouton", Harm::Soggy},
    {"gelatin", Harm::Weeps},
    {"gelatine", Harm::Weeps},
    {"fruit jelly", Harm::Weeps},
    {"fresh basil", Harm::Fades},
    {"fresh chives", Harm::Fades},
    {"fresh cilantro", Harm::Fades},
    {"fresh coriander", Harm::Fades},
    {"fresh dill", Harm::Fades},
    {"fresh herbs", Harm::Fades},
    {"fresh mint", Harm::Fades},
    {"fresh parsley", Harm::Fades},
};

const PhraseBook& foods_book() {
    static const auto book = [] {
        std::vector<std::string_view> phrases;
        for (const auto& entry : foods) {
            phrases.push_back(entry.food);
        }
        return PhraseBook{phrases};
    }();
    return book;
}

/// Only ingredients are looked at: a dish called "potato soup" may have none left to see.
Findings harmed(const Scene& scene, Harm harm) {
    Findings found;
    for (const auto& ingredient : scene.package.ingredients) {
        if (ingredient.on_cook_day) {
            continue;
        }
        const auto words = words_of(text_of(ingredient.add));
        for (const auto& match : foods_book().find(words)) {
            if (foods[match.entries.front()].harm == harm) {
                found.push_back(
                    {{joined(words, match.first, match.count)}, ingredient.where.key("add")});
                break;
            }
        }
    }
    return found;
}

template <Harm harm>
Findings harmed_as(const Scene& scene) {
    return harmed(scene, harm);
}

constexpr CautionRule rules[] = {
    {"chilled-over-a-week", CautionLevel::Refuse,
     "{0} days in the refrigerator before freezing; expected {1} at most", "",
     "FDA Food Code 3-501.17, Date Marking", chilled_over_a_week},
    {"chilled-too-long", CautionLevel::Report,
     "{0} days in the refrigerator before freezing is more than the {1} that are advised ({2})", "",
     "FoodSafety.gov, Cold Food Storage Chart", chilled_too_long},
    {"use-by-beyond-list", CautionLevel::Report,
     "use_by {0} is later than {1}: \"{3}\" is at its best for up to {2} months ({4})", "",
     "FoodSafety.gov, Cold Food Storage Chart", use_by_beyond_list},
    {"rice-cool-fast", CautionLevel::Check,
     "cooked rice must be cold within two hours: heating it again does not destroy the poison "
     "that forms in warm rice",
     "", "University of Saskatchewan, food safety of rice (Bacillus cereus)", cooked_rice},
    {"freezes-limp", CautionLevel::Check,
     "{0} turns limp and watery in the freezer; better added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Limp>},
    {"freezes-soft", CautionLevel::Check,
     "{0} turns soft and crumbly in the freezer; better added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Soft>},
    {"freezes-mushy", CautionLevel::Check,
     "{0} turns mushy in the freezer; better cooked and added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Mushy>},
    {"freezes-rubbery", CautionLevel::Check,
     "{0} turns rubbery in the freezer; better added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Rubbery>},
    {"freezes-separates", CautionLevel::Check,
     "{0} separates in the freezer; better added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Separates>},
    {"freezes-soggy", CautionLevel::Check,
     "{0} turns soggy in the freezer; better added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Soggy>},
    {"freezes-weeps", CautionLevel::Check,
     "{0} weeps and goes thin in the freezer; better added on cook day", "", do_not_freeze_well,
     harmed_as<Harm::Weeps>},
    {"freezes-fades", CautionLevel::Check,
     "{0} loses colour and flavour in the freezer; better added on cook day", "",
     do_not_freeze_well, harmed_as<Harm::Fades>},
};

} // namespace

std::span<const CautionRule> freezing_rules() {
    return rules;
}

} // namespace thawslip::kitchen

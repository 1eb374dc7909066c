#include "kitchen/cautions/caution_topics.h"
#include "kitchen/cautions/plausible.h"
#include "kitchen/measures/unit_text.h"
#include "kitchen/sources.h"
#include "kitchen/storage/chilled_wait.h"

#include <algorithm>
#include <cmath>

// What can be read but is hardly meant: a slip of the keyboard that would print a wrong date or a
// thawing time far too short.

namespace thawslip::kitchen {
namespace {

using namespace scene;
using std::chrono::days;

KeyPath made_place(const Scene& scene) {
    return scene.package.made ? scene.package.where.key("made") : KeyPath{"day.made"};
}

/// Whether the printed date is before today: then that is said, and not how old the food is.
bool is_past(const Scene& scene) {
    return scene.settings.today && scene.keep.date < *scene.settings.today;
}

std::chrono::months most_months(Figure figure) {
    return std::chrono::months{static_cast<int>(bounds_of(figure).most)};
}

Findings made_years_away(const Scene& scene) {
    const auto& today = scene.settings.today;
    if (!today) {
        return {};
    }
    const auto latest = add_months(*today, most_months(Figure::MadeMonthsAhead));
    const auto earliest = add_months(*today, -most_months(Figure::MadeMonthsAgo));
    if (earliest <= scene.made && scene.made <= latest) {
        return {};
    }
    return {{{to_iso(scene.made), to_iso(*today), to_iso(earliest), to_iso(latest)},
             made_place(scene)}};
}

Findings made_in_future(const Scene& scene) {
    const auto& today = scene.settings.today;
    if (!today || scene.made <= *today) {
        return {};
    }
    return {{{to_iso(scene.made), to_iso(*today)}, made_place(scene)}};
}

Findings made_long_ago(const Scene& scene) {
    const auto& today = scene.settings.today;
    if (!today || is_past(scene)) {
        return {};
    }
    const auto ago = static_cast<double>(days_between(scene.made, *today).count());
    return hold_against_bounds(Figure::MadeDaysAgo, ago) == Plausible::TooLarge
               ? Findings{{{to_iso(scene.made), to_iso(*today)}, made_place(scene)}}
               : Findings{};
}

template <DateBasis basis>
Findings past_its_date(const Scene& scene) {
    if (!is_past(scene) || scene.keep.basis != basis) {
        return {};
    }
    return {{{to_iso(scene.keep.date), to_iso(*scene.settings.today)},
             scene.package.where.key(basis == DateBasis::SetByCook ? "use_by" : "dish")}};
}

Findings made_after_packing(const Scene& scene) {
    if (!scene.packing_day || scene.made <= *scene.packing_day) {
        return {};
    }
    return {{{to_iso(scene.made), to_iso(*scene.packing_day)}, made_place(scene)}};
}

/// Made earlier, and nothing said of the days since: they count unless it was frozen at once.
Findings chilled_since_made(const Scene& scene) {
    const days written{scene.package.days_refrigerated};
    if (!scene.packing_day || days_chilled(scene.package, *scene.packing_day) <= written) {
        return {};
    }
    const auto since = days_between(scene.made, *scene.packing_day);
    return {{{to_iso(scene.made), to_iso(*scene.packing_day), std::to_string(since.count())},
             scene.package.where.key("days_refrigerated")}};
}

Findings use_by_years_away(const Scene& scene) {
    const auto most = static_cast<int>(bounds_of(Figure::UseByMonths).most);
    const auto end = add_months(scene.made, std::chrono::months{most});
    if (scene.keep.basis != DateBasis::SetByCook || scene.keep.date <= end) {
        return {};
    }
    return {{{to_iso(scene.keep.date), to_iso(scene.made), std::to_string(most), to_iso(end)},
             scene.package.where.key("use_by")}};
}

Findings use_by_beyond_all_lists(const Scene& scene) {
    const auto& rows = scene.table.rows;
    if (scene.keep.basis != DateBasis::SetByCook || !scene.package.food.empty() || rows.empty()) {
        return {};
    }
    const auto longest = std::ranges::max(rows, {}, &StorageRow::high);
    const auto end = add_months(scene.made, longest.high);
    if (scene.keep.date <= end) {
        return {};
    }
    return {{{to_iso(scene.keep.date), to_iso(end), std::to_string(longest.high.count())},
             scene.package.where.key("use_by")}};
}

std::string grams_text(const Scene& scene, double grams) {
    return to_text(Mass{grams}, style(scene));
}

Findings serving_weight(const Scene& scene) {
    const auto each = serving_grams(scene.package);
    if (!each || hold_against_bounds(Figure::ServingWeight, *each) == Plausible::Yes) {
        return {};
    }
    const auto& expected = bounds_of(Figure::ServingWeight);
    return {{{grams_text(scene, scene.package.weight->grams),
              std::to_string(scene.package.servings), grams_text(scene, *each),
              grams_text(scene, expected.least), grams_text(scene, expected.most)},
             place_of_size(scene.package, "weight")}};
}

Findings bag_face(const Scene& scene, Plausible wrong) {
    const auto area = bag_area(scene.package);
    if (!area || hold_against_bounds(Figure::BagArea, *area) != wrong) {
        return {};
    }
    return {{{grams_text(scene, scene.package.weight->grams),
              thickness_text(*scene.package.thickness, style(scene)),
              thickness_text(least_thickness(*scene.package.weight), style(scene))},
             place_of_size(scene.package, "thickness")}};
}

Findings bag_too_wide(const Scene& scene) {
    return bag_face(scene, Plausible::TooLarge);
}

Findings bag_too_narrow(const Scene& scene) {
    return bag_face(scene, Plausible::TooSmall);
}

/// "30 cm" for "30 mm": what is taller than wide thaws from its sides, and sooner on paper. A box
/// may be so, if it is what its height says.
Findings bag_on_edge(const Scene& scene) {
    const auto& package = scene.package;
    const auto steep = bag_steepness(package);
    const bool is_box = package.container && package.container->height;
    if (is_box || !steep || !bag_too_narrow(scene).empty() ||
        hold_against_bounds(Figure::BagSteepness, *steep) != Plausible::TooLarge) {
        return {};
    }
    const auto side = Length::millimetres(std::round(*bag_side(package) * 10.0));
    return {{{grams_text(scene, package.weight->grams),
              thickness_text(*package.thickness, style(scene)), thickness_text(side, style(scene))},
             place_of_size(package, "thickness")}};
}

/// Square centimetres.
double face_of(const Container& container) {
    return container.width.in_millimetres() * container.length.in_millimetres() / 100.0;
}

/// A thickness that is less than what fills its container would thaw too soon on paper.
Findings container_too_small(const Scene& scene) {
    constexpr double near_enough = 0.85; // as well as a bag is measured: common practice, no source
    const auto& package = scene.package;
    const auto area = bag_area(package);
    if (!area || !package.container || face_of(*package.container) >= near_enough * *area) {
        return {};
    }
    const auto thick = *package.thickness * (*area / face_of(*package.container));
    return {
        {{grams_text(scene, package.weight->grams), package.container->as_written,
          thickness_text(thick, style(scene)), thickness_text(*package.thickness, style(scene))},
         place_of_size(package, "thickness")}};
}

Findings many_portions(const Scene& scene) {
    const auto& package = scene.package;
    const double portions = static_cast<double>(package.servings) * package.bags;
    if (hold_against_bounds(Figure::Portions, portions) != Plausible::TooLarge) {
        return {};
    }
    return {{{std::to_string(package.servings), std::to_string(package.bags),
              std::to_string(package.servings * package.bags)},
             place_of_size(package, "servings")}};
}

constexpr CautionRule plausible_rows[] = {
    refusal(
        "use-by-years-away", practice, use_by_years_away,
        "use_by {0} is more than {2} months after the day it was made, {1}; expected {3} at the "
        "latest",
        "no published list keeps any food longer than 18 months at its best: is the year right?"),
    refusal(
        "made-years-away", practice, made_years_away,
        "made {0} is years away from today, {1}; expected a day from {2} to {3}",
        "is the year right? what has stood in a freezer for longer than that needs no new label"),
    refusal("bag-too-wide", practice, bag_too_wide,
            "a bag of {0} that is {1} thick would be wider than an A2 sheet, and its thawing and "
            "freezing times far too short; expected a thickness of {2} at least",
            "weight and thickness are of one bag, as frozen, lying flat"),
    {"bag-too-narrow", CautionLevel::Report, practice, bag_too_narrow},
    {"bag-on-edge", CautionLevel::Report, practice, bag_on_edge},
    {"container-too-small", CautionLevel::Report, practice, container_too_small},
    {"serving-weight", CautionLevel::Report, practice, serving_weight},
    {"many-portions", CautionLevel::Report, practice, many_portions},
    {"made-in-future", CautionLevel::Report, practice, made_in_future},
    {"made-long-ago", CautionLevel::Report, practice, made_long_ago},
    {"already-past-best", CautionLevel::Report, "FoodSafety.gov, Cold Food Storage Chart",
     past_its_date<DateBasis::StorageTable>},
    {"already-past-use-by", CautionLevel::Report, practice, past_its_date<DateBasis::SetByCook>},
    {"made-after-packing", CautionLevel::Report, practice, made_after_packing},
    {"chilled-since-made", CautionLevel::Report, "FDA Food Code 3-501.17, Date Marking",
     chilled_since_made},
    {"use-by-beyond-all-lists", CautionLevel::Report, "FoodSafety.gov, Cold Food Storage Chart",
     use_by_beyond_all_lists},
};

} // namespace

std::span<const CautionRule> plausible_rules() {
    return plausible_rows;
}

} // namespace thawslip::kitchen

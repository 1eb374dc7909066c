#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/parts_ahead.h"
#include "kitchen/storage/fridge_life.h"

// What is bought, cut or cooked before the packing day waits in the refrigerator, and the wait
// counts.

namespace thawslip::kitchen {
namespace {

using namespace scene;

/// How long before the packing day things are prepared; none where all is done on one day.
std::chrono::days ahead(const Scene& scene) {
    return scene.prepared && scene.packing_day ? days_between(*scene.prepared, *scene.packing_day)
                                               : std::chrono::days{0};
}

Findings too_long_ahead(const Scene& scene) {
    Findings found;
    const auto days = ahead(scene);
    if (days == std::chrono::days{0}) {
        return found;
    }
    for (const auto& [ingredient, kinds] : parts_ahead(scene.table, scene.package)) {
        const auto row = shortest_fridge_life(scene.table, kinds);
        if (row && days > row->high) {
            found.push_back({{ingredient->add.item, std::to_string(days.count()),
                              std::to_string(row->high.count())},
                             ingredient->where.key("for")});
        }
    }
    return found;
}

Findings counts_ahead(const Scene& scene) {
    Findings found;
    const auto days = ahead(scene);
    if (days == std::chrono::days{0}) {
        return found;
    }
    for (const auto& part : parts_ahead(scene.table, scene.package)) {
        found.push_back(
            {{part.ingredient->add.item, to_iso(*scene.prepared), std::to_string(days.count())},
             part.ingredient->where.key("for")});
    }
    return found;
}

constexpr CautionRule ahead_rows[] = {
    refusal("ahead-too-long", "FoodSafety.gov, Cold Food Storage Chart", too_long_ahead,
            "\"{0}\" is ready {1} days before it is packed; its list lets it stand in the "
            "refrigerator for {2} at most",
            "buy or cook it nearer to the packing day, or freeze it in between"),
    {"ahead-counts", CautionLevel::Check,
     "FDA Food Code 3-501.17, Date Marking: the days before freezing count", counts_ahead},
};

} // namespace

std::span<const CautionRule> ahead_rules() {
    return ahead_rows;
}

} // namespace thawslip::kitchen

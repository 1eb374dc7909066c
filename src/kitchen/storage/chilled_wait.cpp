#include "kitchen/storage/chilled_wait.h"

#include "kitchen/foods/dish_words.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using std::chrono::days;

constexpr days where_no_list_says{1};
constexpr double warmest_refrigerator = 5.0; // °C: FDA Food Code 3-501.16, 41 °F

bool is_too_warm(const ThawSettings& settings) {
    return settings.refrigerator.celsius > warmest_refrigerator;
}

/// What has no row and spoils may not wait long; bread and fruit have no need of one.
days chilled_life(const std::string& food, const StorageTable& table) {
    if (const auto row = find_fridge_life(table, food))
        return row->low;
    return kind_of(table, food) == FoodKind::Other ? food_code_days : where_no_list_says;
}

} // namespace

days days_chilled(const Package& package, Date packing_day) {
    const auto made = package.made.value_or(packing_day);
    return std::max(days{package.days_refrigerated}, days_between(made, packing_day));
}

days may_wait_chilled(const Package& package, Date packing_day, const StorageTable& table,
                      const ThawSettings& settings) {
    if (is_too_warm(settings))
        return days{0};
    const bool unknown = package.food_basis == FoodBasis::Nothing || package.food.empty();
    auto life = unknown ? where_no_list_says : food_code_days;
    for (const auto& food : foods_kept_chilled(table, package))
        life = std::min(life, chilled_life(food, table));
    return std::max(life - days_chilled(package, packing_day), days{0});
}

std::optional<DaysLeft> keeps_thawed(const Package& package, Date packing_day,
                                     const StorageTable& table, const ThawSettings& settings) {
    if (package.thaw.method != ThawMethod::Refrigerator)
        return std::nullopt;
    auto left = days_left_after_thawing(table, foods_kept_chilled(table, package),
                                        days_chilled(package, packing_day));
    if (left && is_too_warm(settings))
        left->low = left->high = days{0};
    return left;
}

} // namespace thawslip::kitchen

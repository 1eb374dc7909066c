#include "kitchen/chilled_wait.h"

#include "kitchen/fridge_life.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using std::chrono::days;

constexpr days where_no_list_says{1};
constexpr double warmest_refrigerator = 5.0; // °C: FDA Food Code 3-501.16, 41 °F

/// Bread and fruit have no row and no need of one beside food that has; raw food without a row
/// does.
days chilled_life(const std::string& food, const StorageTable& table) {
    if (const auto row = find_fridge_life(table, food))
        return row->low;
    return kind_of(table, food) == FoodKind::Other ? food_code_days : where_no_list_says;
}

bool is_on_no_list(const Package& package, const StorageTable& table) {
    return std::ranges::none_of(package.food, [&](const std::string& food) {
        return find_fridge_life(table, food).has_value();
    });
}

} // namespace

days days_chilled(const Package& package, Date packing_day) {
    const auto made = package.made.value_or(packing_day);
    return std::max(days{package.days_refrigerated}, days_between(made, packing_day));
}

days may_wait_chilled(const Package& package, Date packing_day, const StorageTable& table,
                      const ThawSettings& settings) {
    if (settings.refrigerator.celsius > warmest_refrigerator)
        return days{0};
    const bool unknown = package.food_basis == FoodBasis::Nothing || is_on_no_list(package, table);
    auto life = unknown ? where_no_list_says : food_code_days;
    for (const auto& food : package.food)
        life = std::min(life, chilled_life(food, table));
    return std::max(life - days_chilled(package, packing_day), days{0});
}

} // namespace thawslip::kitchen

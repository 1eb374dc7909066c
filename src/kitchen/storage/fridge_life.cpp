#include "kitchen/storage/fridge_life.h"

#include "kitchen/storage/storage_rows.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using std::chrono::days;

bool is_for(const ThawedRow& row, FoodKind kind) {
    return !row.kind || *row.kind == kind;
}

/// The row for one kind: the table's own rule set first, then any other list's. Of its own row for
/// whatever food and another list's for this very one the shorter counts: food for babies is for
/// the same day everywhere.
const ThawedRow* find_thawed(const StorageTable& table, FoodKind kind) {
    const ThawedRow* of_any_food = nullptr;
    const ThawedRow* of_others = nullptr;
    for (const auto& row : table.after_thawing) {
        if (!is_for(row, kind)) {
            continue;
        }
        const bool own = row.rule_set == table.rule_set;
        if (own && row.kind) {
            return &row;
        }
        if (own) {
            of_any_food = &row;
        } else if (of_others == nullptr && row.kind) {
            of_others = &row;
        }
    }
    const bool others_count =
        of_others != nullptr && (of_any_food == nullptr || of_others->low < of_any_food->low);
    return others_count ? of_others : of_any_food;
}

days less(days limit, days spent) {
    return std::max(limit - spent, days{0});
}

/// What is left of one kind of food; nothing where no list says anything.
std::optional<DaysLeft> days_left_of(const StorageTable& table, const std::string& food,
                                     days days_before) {
    const auto* row = find_thawed(table, kind_of(table, food));
    if (row == nullptr) {
        return std::nullopt;
    }
    DaysLeft left{row->low, row->high, *row};
    const auto fresh = find_fridge_life(table, food);
    if (fresh && (fresh->low < row->low || fresh->high < row->high)) {
        left.low = std::min(row->low, fresh->low);
        left.high = std::min(row->high, fresh->high);
        left.capped_by = fresh;
    }
    const auto spent = row->days_before_count ? days_before : days{0};
    left.low = less(left.low, spent);
    left.high = less(left.high, spent);
    return left;
}

} // namespace

std::optional<FridgeRow> find_fridge_life(const StorageTable& table, std::string_view food) {
    return row_for(table.before_freezing, food, table.rule_set);
}

std::optional<FridgeRow> shortest_fridge_life(const StorageTable& table,
                                              std::span<const std::string> foods) {
    std::optional<FridgeRow> shortest;
    for (const auto& food : foods) {
        const auto row = find_fridge_life(table, food);
        if (row && (!shortest || keeps_shorter(*row, *shortest))) {
            shortest = row;
        }
    }
    return shortest;
}

std::optional<days> longest_fridge_life(const StorageTable& table, std::string_view food) {
    std::optional<days> longest;
    for (const auto& row : table.before_freezing) {
        if (same_but_for_case(row.food, food)) {
            longest = std::max(longest.value_or(days{0}), row.high);
        }
    }
    return longest;
}

std::optional<DaysLeft> days_left_after_thawing(const StorageTable& table,
                                                std::span<const std::string> foods,
                                                days days_before) {
    std::optional<DaysLeft> shortest;
    for (const auto& food : foods) {
        auto left = days_left_of(table, food, days_before);
        if (left && (!shortest || keeps_shorter(*left, *shortest))) {
            shortest = std::move(left);
        }
    }
    return shortest;
}

} // namespace thawslip::kitchen

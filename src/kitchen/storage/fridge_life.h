#pragma once

#include "kitchen/storage/storage.h"

#include <optional>
#include <span>
#include <string>

namespace thawslip::kitchen {

/// The row that says how long a class keeps in the refrigerator before it is frozen: the table's
/// rule set first, then any other list's. Nothing for a class without such a row.
std::optional<FridgeRow> find_fridge_life(const StorageTable& table, std::string_view food);

/// The row of the class that keeps shortest, by the low end, then the high one; classes without
/// a row are passed over.
std::optional<FridgeRow> shortest_fridge_life(const StorageTable& table,
                                              std::span<const std::string> foods);

/// The most days that any list gives for a kind of food before it is frozen; nothing where none
/// has a row.
std::optional<std::chrono::days> longest_fridge_life(const StorageTable& table,
                                                     std::string_view food);

/// How many days food keeps in the refrigerator once it has thawed there, counted from the day
/// after it has; 0 is "the same day". Both ends never negative.
struct DaysLeft {
    std::chrono::days low{0};
    std::chrono::days high{0};
    ThawedRow row; ///< the row it was worked out from
    /// The refrigerator row that allows less than `row` does; nothing where that decides alone.
    std::optional<FridgeRow> capped_by = std::nullopt;
};

/// Freezing stops the count of days, it does not start it again: `days_before`, the days in the
/// refrigerator before freezing, are taken off (FDA Food Code 3-501.17, as Minnesota Rules
/// 4626.0400 words it), except where the list's own limit already allows for them. Nor does it
/// lengthen it: no food keeps longer than it would have fresh, by find_fridge_life. Of several
/// classes the shortest-lived counts. Nothing when no list says anything.
std::optional<DaysLeft> days_left_after_thawing(const StorageTable& table,
                                                std::span<const std::string> foods,
                                                std::chrono::days days_before);

/// On how many days a food business in the US may serve what it made itself: seven at 5 °C (41 °F),
/// the day of making being day 1, days in the freezer not counted (FDA Food Code 3-501.17). Home
/// guidance is stricter; this is an outer bound.
inline constexpr std::chrono::days food_code_days{7};

} // namespace thawslip::kitchen

#pragma once

#include "base/result.h"
#include "kitchen/date.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// One row of one published list: how long a class of food keeps its best quality at −18 °C.
struct StorageRow {
    std::string food;     ///< the class as a cook writes it: "soup or stew"
    std::string rule_set; ///< whose list: "us", "canada", …
    std::chrono::months low{0};
    std::chrono::months high{0};
    std::string row;    ///< the row's name in that list
    std::string source; ///< publisher, title, year
    std::string status; ///< how the figure was checked: "read", "read in a copy", "from memory"
};

/// All rows, in the order of the data file; see storage.toml.
struct StorageTable {
    std::vector<StorageRow> rows;
    std::string rule_set = "us"; ///< the list that is asked first
};

/// Every class the table knows, without repeats, in the table's order.
std::vector<std::string> storage_classes(const StorageTable& table);

/// The row for one class under the table's rule set; where that list has none, the first row of
/// another list (the caller can see it by `rule_set`). Nothing for an unknown class.
std::optional<StorageRow> find_storage(const StorageTable& table, std::string_view food);

/// The row of the shortest-lived of several classes, by the low end; the first of equals.
/// Nothing when one of them is unknown or `foods` is empty.
std::optional<StorageRow> shortest_lived(const StorageTable& table,
                                         std::span<const std::string> foods);

} // namespace thawslip::kitchen

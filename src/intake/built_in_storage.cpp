#include "intake/storage_data.h"
#include "intake/storage_file.h"

#include <optional>
#include <string>

namespace thawslip::intake {
namespace {

/// A row of the freezer's list or the refrigerator's.
template <class Row, class Time>
Row row_of(const RowData& data) {
    return {.food = std::string{data.food},
            .rule_set = std::string{data.rule_set},
            .low = Time{data.low},
            .high = Time{data.high},
            .row = std::string{data.row},
            .source = std::string{data.source},
            .status = std::string{data.status}};
}

kitchen::StorageRow freezer_row_of(const RowData& data) {
    auto row = row_of<kitchen::StorageRow, std::chrono::months>(data);
    if (data.weeks) {
        row.low = row.high = std::chrono::months{0};
        row.low_weeks = std::chrono::weeks{data.low};
        row.high_weeks = std::chrono::weeks{data.high};
    }
    return row;
}

kitchen::ThawedRow thawed_of(const ThawedData& data) {
    using std::chrono::days;
    const auto& row = data.row;
    const auto kind =
        data.kind < 0 ? std::nullopt : std::optional{static_cast<kitchen::FoodKind>(data.kind)};
    return {kind,
            std::string{row.rule_set},
            days{row.low},
            days{row.high},
            data.days_before_count,
            std::string{row.row},
            std::string{row.source},
            std::string{row.status}};
}

} // namespace

kitchen::StorageTable built_in_storage(std::string rule_set) {
    kitchen::StorageTable table;
    table.rule_set = std::move(rule_set);
    table.words = food_words;
    table.rule_sets.assign(storage_data.rule_sets.begin(), storage_data.rule_sets.end());
    for (const auto& known : storage_data.classes) {
        table.classes.push_back(
            {std::string{known.food}, known.kind, known.watery, known.eaten_frozen});
    }
    for (const auto& row : storage_data.freezer) {
        table.rows.push_back(freezer_row_of(row));
    }
    for (const auto& row : storage_data.before_freezing) {
        table.before_freezing.push_back(row_of<kitchen::FridgeRow, std::chrono::days>(row));
    }
    for (const auto& row : storage_data.after_thawing) {
        table.after_thawing.push_back(thawed_of(row));
    }
    for (const auto& [food, row, source, status, why, instead] : storage_data.unsuitable) {
        table.unsuitable.push_back({std::string{food}, std::string{row}, std::string{source},
                                    std::string{status}, std::string{why}, std::string{instead}});
    }
    return table;
}

} // namespace thawslip::intake

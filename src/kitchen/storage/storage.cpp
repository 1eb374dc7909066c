#include "kitchen/storage/storage.h"

#include "base/list.h"
#include "kitchen/foods/dish_words.h"
#include "kitchen/storage/storage_rows.h"
#include "kitchen/texts/text.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::kitchen {
namespace {

Date date_after(Date made, std::chrono::months months, std::chrono::weeks weeks) {
    return add_days(add_months(made, months), weeks);
}

std::string range_text(auto low, auto high, std::string_view unit) {
    return low == high ? fmt::format("{} {}{}", high.count(), unit, high.count() == 1 ? "" : "s")
                       : fmt::format("{} to {} {}s", low.count(), high.count(), unit);
}

/// Roughly, for comparing: in days.
auto span_of(const StorageRow& row) {
    constexpr int days_of_month = 30;
    return std::pair{std::chrono::days{row.low.count() * days_of_month} + row.low_weeks,
                     std::chrono::days{row.high.count() * days_of_month} + row.high_weeks};
}

bool ends_sooner(const StorageRow& a, const StorageRow& b) {
    return span_of(a) < span_of(b);
}

} // namespace

std::vector<std::string> storage_classes(const StorageTable& table) {
    std::vector<std::string> classes;
    for (const auto& row : table.rows) {
        add_once(classes, row.food);
    }
    return classes;
}

std::optional<StorageRow> find_storage(const StorageTable& table, std::string_view food) {
    return row_for(table.rows, food, table.rule_set);
}

std::optional<StorageRow> shortest_lived(const StorageTable& table,
                                         std::span<const std::string> foods) {
    std::optional<StorageRow> shortest;
    for (const auto& food : foods) {
        const auto row = find_storage(table, food);
        if (!row) {
            return std::nullopt;
        }
        if (!shortest || ends_sooner(*row, *shortest)) {
            shortest = row;
        }
    }
    return shortest;
}

Date low_end(const StorageRow& row, Date made) {
    return date_after(made, row.low, row.low_weeks);
}

Date high_end(const StorageRow& row, Date made) {
    return date_after(made, row.high, row.high_weeks);
}

std::string span_text(const StorageRow& row) {
    return row.high_weeks.count() > 0 ? range_text(row.low_weeks, row.high_weeks, "week")
                                      : range_text(row.low, row.high, "month");
}

FoodKind kind_of(const StorageTable& table, std::string_view food) {
    const auto found = std::ranges::find_if(
        table.classes, [&](const FoodClass& known) { return same_but_for_case(known.food, food); });
    return found == table.classes.end() ? FoodKind::Other : found->kind;
}

Wetness wetness_of(const StorageTable& table, std::span<const std::string> foods) {
    const auto watery = std::ranges::count_if(foods, [&](const std::string& food) {
        return std::ranges::any_of(table.classes, [&](const FoodClass& known) {
            return known.watery && same_but_for_case(known.food, food);
        });
    });
    if (foods.empty()) {
        return Wetness::Either;
    }
    const auto all = static_cast<std::ptrdiff_t>(foods.size());
    return watery == 0 ? Wetness::Dish : watery == all ? Wetness::Soup : Wetness::Either;
}

Wetness wetness_of(const StorageTable& table, const Package& package) {
    const auto wetness = wetness_of(table, package.food);
    return wetness == Wetness::Dish && names_soup(package) ? Wetness::Either : wetness;
}

bool is_eaten_frozen(const StorageTable& table, const Package& package) {
    const auto is_so = [&](const std::string& food) {
        return std::ranges::any_of(table.classes, [&](const FoodClass& known) {
            return known.eaten_frozen && same_but_for_case(known.food, food);
        });
    };
    return package.food_basis == FoodBasis::Given && !package.cook && !package.food.empty() &&
           std::ranges::all_of(package.food, is_so);
}

bool is_raw(FoodKind kind) {
    using enum FoodKind;
    return is_one_of(kind, {RawGround, RawPoultry, RawCut, RawFish, RawShellfish, RawEgg});
}

bool any_spoils(const StorageTable& table, std::span<const std::string> foods) {
    return std::ranges::any_of(
        foods, [&](const std::string& food) { return kind_of(table, food) != FoodKind::Other; });
}

bool any_raw(const StorageTable& table, std::span<const std::string> foods) {
    return std::ranges::any_of(
        foods, [&](const std::string& food) { return is_raw(kind_of(table, food)); });
}

bool is_dangerous(const StorageTable& table, std::string_view food) {
    const auto row = find_unsuitable(table, food);
    return row && !row->why.empty();
}

std::optional<UnsuitableRow> find_unsuitable(const StorageTable& table, std::string_view food) {
    const auto found = std::ranges::find_if(table.unsuitable, [&](const UnsuitableRow& row) {
        return same_but_for_case(row.food, food);
    });
    return found == table.unsuitable.end() ? std::nullopt : std::optional{*found};
}

} // namespace thawslip::kitchen

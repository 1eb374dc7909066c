#include "kitchen/storage.h"

#include "base/nearest.h"
#include "kitchen/storage_rows.h"
#include "kitchen/text.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

/// How many words of `wanted` stand in `candidate`, words that name nothing left out.
std::size_t shared_words(const std::vector<std::string>& wanted, std::string_view candidate) {
    const auto names_nothing = [](const std::string& word) {
        return word == "or" || word == "and" || word == "with" || word == "of" || word == "raw" ||
               word == "cooked";
    };
    const auto words = words_of(candidate);
    std::size_t shared = 0;
    for (const auto& word : wanted) {
        if (!names_nothing(word) && std::ranges::find(words, word) != words.end()) {
            ++shared;
        }
    }
    return shared;
}

} // namespace

std::vector<std::string> storage_classes(const StorageTable& table) {
    std::vector<std::string> classes;
    for (const auto& row : table.rows) {
        if (std::ranges::find(classes, row.food) == classes.end()) {
            classes.push_back(row.food);
        }
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
        if (!shortest || keeps_shorter(*row, *shortest)) {
            shortest = row;
        }
    }
    return shortest;
}

std::optional<std::string> nearest_class(const StorageTable& table, std::string_view food) {
    const auto classes = storage_classes(table);
    if (auto near = nearest(food, classes)) {
        return near;
    }
    const auto wanted = words_of(food);
    std::optional<std::string> best;
    std::size_t most = 0;
    for (const auto& candidate : classes) {
        if (const auto shared = shared_words(wanted, candidate); shared > most) {
            most = shared;
            best = candidate;
        }
    }
    return best;
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

bool is_raw(FoodKind kind) {
    switch (kind) {
    case FoodKind::RawGround:
    case FoodKind::RawPoultry:
    case FoodKind::RawCut:
    case FoodKind::RawFish:
    case FoodKind::RawShellfish:
    case FoodKind::RawEgg: return true;
    case FoodKind::CookedDish:
    case FoodKind::Leftover:
    case FoodKind::ReadyToEat:
    case FoodKind::EggDish:
    case FoodKind::Vegetable:
    case FoodKind::Other: break;
    }
    return false;
}

bool any_raw(const StorageTable& table, std::span<const std::string> foods) {
    return std::ranges::any_of(
        foods, [&](const std::string& food) { return is_raw(kind_of(table, food)); });
}

std::optional<UnsuitableRow> find_unsuitable(const StorageTable& table, std::string_view food) {
    const auto found = std::ranges::find_if(table.unsuitable, [&](const UnsuitableRow& row) {
        return same_but_for_case(row.food, food);
    });
    return found == table.unsuitable.end() ? std::nullopt : std::optional{*found};
}

} // namespace thawslip::kitchen

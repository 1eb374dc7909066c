#pragma once

#include "kitchen/storage/storage.h"

#include <span>
#include <string_view>

namespace thawslip::intake {

// src/kitchen/storage.toml as constants, made from it when Thawslip is built (storage_maker.cpp):
// reading it took a tenth of what ten labels cost.

struct RowData {
    std::string_view food; ///< empty for rows after thawing
    std::string_view rule_set;
    int low = 0; ///< months, or days
    int high = 0;
    std::string_view row;
    std::string_view source;
    std::string_view status;
    bool weeks = false; ///< weeks instead of months
};

struct ThawedData {
    RowData row;
    int kind = -1; ///< a FoodKind; -1: every kind
    bool days_before_count = true;
};

struct ClassData {
    std::string_view food;
    kitchen::FoodKind kind = kitchen::FoodKind::Other;
    bool watery = false;
    bool eaten_frozen = false;
};

struct UnsuitableData {
    std::string_view food;
    std::string_view row;
    std::string_view source;
    std::string_view status;
    std::string_view why;
    std::string_view instead;
};

struct StorageData {
    std::span<const std::string_view> rule_sets;
    std::span<const ClassData> classes;
    std::span<const RowData> freezer;
    std::span<const RowData> before_freezing;
    std::span<const ThawedData> after_thawing;
    std::span<const UnsuitableData> unsuitable;
};

extern const StorageData storage_data;

/// src/kitchen/food_words, all languages together, sorted by their keys (food_words_maker.cpp).
extern const kitchen::FoodWords food_words;

} // namespace thawslip::intake

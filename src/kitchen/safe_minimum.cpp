#include "kitchen/safe_minimum.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

using std::chrono::minutes;

constexpr std::string_view us_source =
    "FoodSafety.gov, Safe Minimum Internal Temperatures"; // read in a copy
constexpr std::string_view uk_source =
    "UK Food Standards Agency, Cooking your food"; // 70 °C for 2 min: from memory

constexpr double celsius_of(double fahrenheit) {
    return (fahrenheit - 32.0) * 5.0 / 9.0;
}

constexpr SafeMinimum us_145{celsius_of(145), 63, minutes{0}, minutes{0}, us_source};
constexpr SafeMinimum us_145_rest{celsius_of(145), 63, minutes{3}, minutes{0}, us_source};
constexpr SafeMinimum us_160{celsius_of(160), 71, minutes{0}, minutes{0}, us_source};
constexpr SafeMinimum us_165{celsius_of(165), 74, minutes{0}, minutes{0}, us_source};
constexpr SafeMinimum uk_70{70, 70, minutes{0}, minutes{2}, uk_source};

std::optional<SafeMinimum> us_minimum(FoodKind kind) {
    switch (kind) {
    case FoodKind::CookedDish:
    case FoodKind::Leftover:
    case FoodKind::RawPoultry: return us_165;
    case FoodKind::EggDish:
    case FoodKind::RawGround: return us_160;
    case FoodKind::RawCut: return us_145_rest;
    case FoodKind::RawFish: return us_145;
    case FoodKind::RawShellfish: // judged by the eye: flesh pearly and opaque, shells open
    case FoodKind::ReadyToEat:
    case FoodKind::Other: return std::nullopt;
    }
    return std::nullopt;
}

} // namespace

std::optional<SafeMinimum> safe_minimum(FoodKind kind, std::string_view rule_set) {
    const auto us = us_minimum(kind);
    const bool whole_cut_or_fish = kind == FoodKind::RawCut || kind == FoodKind::RawFish;
    if (rule_set == "uk" && us && !whole_cut_or_fish) {
        return uk_70;
    }
    return us;
}

std::optional<SafeMinimum> safe_minimum(const StorageTable& table,
                                        std::span<const std::string> foods) {
    std::optional<SafeMinimum> highest;
    for (const auto& food : foods) {
        const auto one = safe_minimum(kind_of(table, food), table.rule_set);
        if (one && (!highest || one->celsius > highest->celsius)) {
            highest = one;
        }
    }
    return highest;
}

bool reaches(double target_celsius, const SafeMinimum& minimum) {
    constexpr double as_printed = 0.05; // agencies print 165 °F as 73.9 °C, 145 °F as 62.8 °C
    return target_celsius >= std::min(minimum.celsius - as_printed, minimum.least_whole_celsius);
}

} // namespace thawslip::kitchen

#pragma once

#include "base/diagnostic.h"
#include "kitchen/day.h"
#include "toml/document.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::intake {

/// What a description may hold at most, told in the messages that refuse more.
struct Limits {
    static constexpr int packages = 100;
    static constexpr int bags = 200;
    static constexpr int servings = 100;
    static constexpr int finishes = 40;
    static constexpr int steps = 40;
    static constexpr int ingredients = 80;
    static constexpr int dish_characters = 80;
    static constexpr int step_characters = 300;
    static constexpr int text_characters = 200;
    static constexpr double grams = 20'000.0;    ///< of one bag
    static constexpr double millimetres = 300.0; ///< thickness of one bag
};

/// Reads a day's description. Everything that is wrong is appended to `faults`, placed; then
/// there is no day. The `where` of each value can be placed through `document`.
std::optional<kitchen::Day> read_day(const toml::Document& document, Diagnostics& faults);

/// Every key that a day's description may have: "day.made", "package[].thaw.method"…
std::vector<std::string> accepted_keys();

} // namespace thawslip::intake

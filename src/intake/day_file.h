#pragma once

#include "base/diagnostic.h"
#include "kitchen/day.h"
#include "toml/document.h"

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

/// What could be read of a description.
struct Reading {
    kitchen::Day day;
    bool whole = false; ///< false: there were mistakes, and nothing may be printed from `day`
};

/// Reads a day's description. Everything that is wrong is appended to `faults`, placed.
///
/// Where there are mistakes, the day still holds what the rules of the kitchen can judge, so that
/// what they refuse is told in one go with the rest: a package with a mistake is reduced to its
/// dish and dates, or left out where those are wrong. `where` of each value can be placed through
/// `document`.
Reading read_day(const toml::Document& document, Diagnostics& faults);

/// Every key that a day's description may have: "day.made", "package[].thaw.method"…
std::vector<std::string> accepted_keys();

} // namespace thawslip::intake

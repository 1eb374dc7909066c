#pragma once

#include "base/diagnostic.h"
#include "kitchen/day.h"
#include "toml/document.h"
#include "toml/file_table.h"

#include <string>
#include <vector>

namespace thawslip::intake {

/// What a description may hold at most, told in the messages that refuse more.
struct Limits {
    static constexpr int packages = 100;
    static constexpr int bags = 200;
    static constexpr int servings = 100;
    static constexpr int sizes = 12;  ///< of one dish; together they count as packages
    static constexpr int methods = 4; ///< of thawing: there are no more
    static constexpr int finishes = 40;
    static constexpr int sides = 10;
    static constexpr int steps = 40;
    static constexpr int ingredients = 80;
    static constexpr int values = 20; ///< of `food` and `contains`
    static constexpr int dish_characters = 80;
    static constexpr int step_characters = 300;
    static constexpr int text_characters = 200;
    static constexpr toml::Range<double> grams{1.0, 20'000.0};    ///< of one bag
    static constexpr toml::Range<double> millimetres{2.0, 300.0}; ///< thickness of one bag
    static constexpr toml::Range<double> container_millimetres{20.0, 700.0}; ///< a side of it
    static constexpr toml::Range<double> freezer_litres{5.0, 5000.0};
    /// As long as prepared food may be kept cold: FDA Food Code 3-501.17.
    static constexpr std::chrono::days prepared_ahead{7};
    static constexpr toml::Range<int> years{1990, 2200}; ///< a mistyped century is the usual slip
};

/// What could be read of a description.
struct Reading {
    kitchen::Day day;
    bool whole = false; ///< false: there were mistakes, and nothing may be printed from `day`
};

/// Who gives a description. What was printed before the program knew a rule about sizes, and is in
/// freezers since, is read from the archive all the same.
enum class From { Cook, Archive };

/// Reads a day's description. Everything that is wrong is appended to `faults`, placed.
///
/// Where there are mistakes, the day still holds what could be read, so that the kitchen's rules
/// can be held against it and all be told in one go; what could not be read is absent or at its
/// default. The `where` of each value can be placed through `document`.
Reading read_day(const toml::Document& document, Diagnostics& faults, From from = From::Cook);

/// Adds to `faults` what the kitchen refused in the day, placed through `document`. Left out is
/// what it says about values that have a mistake of their own: it saw only defaults there.
void add_refusals(const toml::Document& document, Diagnostics refusals, Diagnostics& faults);

/// Every key that a day's description may have: "day.made", "package[].thaw.method"…
std::vector<std::string> accepted_keys();

} // namespace thawslip::intake

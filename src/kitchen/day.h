#pragma once

#include "base/key_path.h"
#include "base/length.h"
#include "kitchen/date.h"
#include "kitchen/measures/quantity.h"

#include <chrono>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::kitchen {

/// A weight, in grams.
struct Mass {
    double grams = 0.0;
    friend auto operator<=>(const Mass&, const Mass&) = default;
};

enum class TemperatureScale { Celsius, Fahrenheit };

/// A temperature in degrees Celsius that remembers how the cook wrote it, so that 165 °F is
/// printed as 165 °F and not as 73.9 °C turned back.
struct Temperature {
    double celsius = 0.0;
    TemperatureScale written_in = TemperatureScale::Celsius;
    friend bool operator==(const Temperature&, const Temperature&) = default;
};

/// "7–9 h" is {420 min, 540 min}; "45 min" has both ends equal.
struct TimeRange {
    std::chrono::minutes low{0};
    std::chrono::minutes high{0};
    friend bool operator==(const TimeRange&, const TimeRange&) = default;
};

enum class ThawMethod { Refrigerator, ColdWater, Microwave, FromFrozen };

/// How a bag lies in the refrigerator and in the freezer.
enum class Placing {
    Rack,    ///< on a wire rack: air on both faces
    Tray,    ///< on a tray, a plate or a glass shelf: one face does most of the work
    Stacked, ///< in a stack: the middle one of three
};

/// Another way to thaw than the first that the cook names.
struct OtherMethod {
    ThawMethod method = ThawMethod::ColdWater;
    KeyPath where;
};

struct Thaw {
    ThawMethod method = ThawMethod::Refrigerator; ///< the first of those that the cook names
    std::string note;                             ///< free words, printed after the thaw line
    KeyPath where;
    KeyPath method_where = {};            ///< of `method` in a list; else empty
    std::vector<OtherMethod> others = {}; ///< in the cook's order, each once
};

/// When a finishing ingredient goes in, counted from the start or back from the end of cooking.
struct When {
    enum class Anchor { AtStart, AfterStart, Halfway, BeforeEnd, AtServing };
    Anchor anchor = Anchor::AtStart;
    std::chrono::minutes offset{0}; ///< for AfterStart and BeforeEnd; else 0
    friend bool operator==(const When&, const When&) = default;
};

/// Something that is not in the bag and is added on cook day.
struct Finish {
    Quantity add;
    When when;
    std::string bag; ///< where it waits, in free words: "small bag taped to this one"
    KeyPath where;
};

/// What it is cooked in, as far as rules depend on it. `Other` has no rules of its own.
/// Whatever heats as slowly as a slow cooker, or may, counts as one; a `Warmer` only keeps food
/// hot.
enum class Vessel {
    Other,
    SlowCooker,
    Oven,
    Pan,
    Pot,
    Microwave,
    PressureCooker,
    Grill,
    Steamer,
    Warmer,
};

/// What a cooking time counts from: the food as it is when it starts to cook.
enum class TimeFrom { Thawed, Frozen };

struct Cook {
    std::string in; ///< free words, as written: "slow cooker", "cast-iron pot"
    Vessel vessel = Vessel::Other;
    std::string setting;           ///< "low", "180 °C"; as written
    std::optional<TimeRange> time; ///< from what `time_from` says
    /// Nothing: from the food as it starts to cook, frozen where the thaw method is FromFrozen.
    std::optional<TimeFrom> time_from;
    std::optional<Temperature> until;         ///< target temperature in the middle of the food
    std::optional<std::chrono::seconds> hold; ///< how long the middle stays that hot
    std::string because; ///< why a target below the safe minimum is right here; else empty
    std::vector<std::string> steps;
    KeyPath where;
};

/// By when an ingredient is bought and ready.
enum class IngredientDay {
    DayBefore,  ///< bought, cut or cooked on Day::prepared, and chilled until the packing day
    PackingDay, ///< goes into the bags as well
    CookDay     ///< stays out of them
};

/// What went into a bag, or is kept out of it, for the day sheet and the shopping list.
struct Ingredient {
    Quantity add;
    IngredientDay day = IngredientDay::PackingDay;
    KeyPath where;
};

/// What is cooked on cook day beside the bag, and eaten with it.
struct Side {
    Quantity add;
    TimeRange takes; ///< from its start until it is ready
    std::string in;  ///< free words: "pot"; may be empty
    std::vector<std::string> steps;
    When ready{When::Anchor::AtServing}; ///< counted as a finishing ingredient's moment
    KeyPath where;
    Vessel vessel = Vessel::Other; ///< what `in` names
};

/// Where the kinds of food of a package come from.
enum class FoodBasis {
    Given,  ///< the cook wrote `food`
    Words,  ///< not written: what the words of dish, ingredients and steps name
    Nothing ///< not written, and no word names a food that is known
};

/// How large what food is packed in is, flat: a bag, a tray or a box.
struct Container {
    Length width;
    Length length;
    std::optional<Length> height; ///< of a tray or a box; nothing: a bag
    std::string as_written;       ///< "20 × 28 cm"
    friend bool operator==(const Container&, const Container&) = default;
};

/// Which of its dish's sizes a package is.
struct DishSize {
    int position = 0; ///< among the dish's sizes, from 0
    /// What tells the ids of its bags from those of other sizes: how many a bag serves, and 1000
    /// more for each size before it that serves as many.
    int name = 0;
    int portions = 0; ///< of all bags of the dish together
    KeyPath where;
    std::optional<Mass> lightest = {};   ///< of the bags of all its sizes, as far as they say
    std::optional<Length> thinnest = {}; ///< the same
};

/// One dish of the day and the bags it was packed into. A dish in several sizes is a package for
/// each, alike but for what a size says of itself.
struct Package {
    std::string dish;
    int servings = 0; ///< per bag
    int bags = 1;
    std::optional<DishSize> size = {};             ///< nothing: the dish is packed in one
    std::optional<Container> container = {};       ///< what one bag's food lies in
    std::optional<Date> made;                      ///< where it differs from the day's
    std::vector<std::string> food;                 ///< kinds of food; a mixed dish names several
    std::vector<std::string> food_as_written = {}; ///< of a planned package: before it was read
    FoodBasis food_basis = FoodBasis::Given;       ///< worked out by the plan
    std::optional<Date> use_by;                    ///< set by the cook; wins over `food`
    int days_refrigerated = 0;                     ///< days chilled before freezing
    std::optional<Mass> weight;                    ///< of one bag
    std::optional<Length> thickness;               ///< of one bag as frozen, lying flat
    std::optional<Placing> placing;                ///< where it differs from the kitchen's
    std::string place = {}; ///< where its bags lie, in free words: the day's where it has none
    std::vector<std::string> contains;    ///< allergens, as written
    std::vector<std::string> may_contain; ///< those that may be there by chance, as written
    std::string note;                     ///< free words for the card
    std::string station; ///< where it is packed, in free words: "stove"; may be empty
    Thaw thaw;
    std::vector<Finish> finish; ///< as written; `plan` puts them in order
    std::optional<Cook> cook;
    std::vector<Side> sides = {}; ///< of one bag, as the finishing ingredients are
    std::vector<Ingredient> ingredients;
    KeyPath where;
};

/// Whether it is of the same dish of the day as the size before it.
inline bool goes_on(const Package& package) {
    return package.size && package.size->position > 0;
}

/// Where `key` of a package stands: one that each size of a dish has for itself in its size.
inline KeyPath place_of_size(const Package& package, std::string_view key) {
    return (package.size ? package.size->where : package.where).key(key);
}

/// One packing day, as described by the cook.
struct Day {
    Date made;
    std::string kitchen;                  ///< whose kitchen, in free words; may be empty
    std::optional<double> freezer_litres; ///< capacity, for the load limit
    std::vector<Package> packages;
    std::string place = {}; ///< where its bags lie, in free words; may be empty
    /// The day, before the packing day, on which ingredients are bought, cut or cooked ahead.
    std::optional<Date> prepared = std::nullopt;
};

} // namespace thawslip::kitchen

#pragma once

#include "base/result.h"
#include "kitchen/date.h"
#include "kitchen/day.h"
#include "kitchen/foods/food_words.h"
#include "kitchen/heat/heat_properties.h"

#include <optional>
#include <span>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// What sort a kind of food is of, as far as safe temperatures and keeping times depend on it.
enum class FoodKind {
    Other,        ///< bread, fruit, butter…: no safe minimum temperature is published
    CookedDish,   ///< soup, stew, casserole: packed cooked, or raw as a kit for cook day
    Leftover,     ///< cooked for certain before it was frozen
    ReadyToEat,   ///< cured or cooked by its maker: ham, hot dogs
    EggDish,      ///< quiche, baked custard
    RawGround,    ///< minced meat, raw sausage; and game, which has the same minimum
    RawPoultry,   ///< whole, in pieces or minced
    RawCut,       ///< steaks, chops, roasts of beef, pork, veal, lamb
    RawFish,      ///< fish with fins
    RawShellfish, ///< crustaceans and molluscs
    RawEgg,       ///< out of the shell: beaten, whites, yolks
    Vegetable,    ///< blanched for the freezer, not cooked
    InfantFood,   ///< cooked for a baby: kept shortest, never frozen again
};

/// A kind of food and its sort.
struct FoodClass {
    std::string food; ///< the kind as a cook writes it: "soup or stew"
    FoodKind kind = FoodKind::Other;
    bool watery = false;       ///< a soup's water, about 88 %, instead of a dish's 75 %
    bool eaten_frozen = false; ///< as ice cream is: thawed it is spoilt
};

/// One row of one published list: how long a kind of food keeps its best quality at −18 °C.
struct StorageRow {
    std::string food;     ///< the kind as a cook writes it: "soup or stew"
    std::string rule_set; ///< whose list: "us", "canada", …
    std::chrono::months low{0};
    std::chrono::months high{0};
    std::string row;    ///< the row's name in that list
    std::string source; ///< publisher, title, year
    std::string status; ///< how the figure was checked: "read", "read in a copy", "from memory"
    /// Of a list that counts in weeks; the months are 0 then.
    std::chrono::weeks low_weeks{0};
    std::chrono::weeks high_weeks{0};
};

/// One row of one published list: how many days a kind of food keeps in the refrigerator at
/// 4 °C before it is frozen (or if it never is).
struct FridgeRow {
    std::string food;
    std::string rule_set;
    std::chrono::days low{0};
    std::chrono::days high{0};
    std::string row;
    std::string source;
    std::string status;
};

/// One row of one published list: how many days food keeps once it has thawed in the
/// refrigerator.
struct ThawedRow {
    std::optional<FoodKind> kind; ///< nothing: the row is for every kind
    std::string rule_set;
    std::chrono::days low{0};
    std::chrono::days high{0};
    bool days_before_count = true; ///< whether days chilled before freezing are taken off
    std::string row;
    std::string source;
    std::string status;
};

/// A kind of food that a list advises not to freeze, so that there is no storage life to print.
struct UnsuitableRow {
    std::string food;
    std::string row;
    std::string source;
    std::string status;
    /// Where more than quality is at stake: what is wrong with freezing it, to be read after its
    /// name; else empty.
    std::string why = {};
    std::string instead = {}; ///< what would do, for the hint; empty where `why` is
};

/// All rows, in the order of the data file; see storage.toml.
struct StorageTable {
    std::vector<StorageRow> rows;
    std::string rule_set = "us"; ///< the list that is asked first
    std::vector<FoodClass> classes;
    std::vector<FridgeRow> before_freezing;
    std::vector<ThawedRow> after_thawing;
    std::vector<UnsuitableRow> unsuitable;
    std::vector<std::string> rule_sets; ///< every list there is, in the order they are asked
    FoodWords words = {};               ///< everyday words that mean kinds of food; outlive it
};

/// Every kind of food the table knows, without repeats, in the table's order.
std::vector<std::string> storage_classes(const StorageTable& table);

/// The row for one kind of food under the table's rule set; where that list has none, the first row
/// of another list (the caller can see it by `rule_set`). Nothing for an unknown kind. Letter case
/// is ignored.
std::optional<StorageRow> find_storage(const StorageTable& table, std::string_view food);

/// The row of the shortest-lived of several kinds, by the low end, then by the high end; the
/// first of equals. Nothing when one of them is unknown or `foods` is empty.
std::optional<StorageRow> shortest_lived(const StorageTable& table,
                                         std::span<const std::string> foods);

/// The day on which the low end, or the high end, of a row's time is over for food of `made`.
Date low_end(const StorageRow& row, Date made);
Date high_end(const StorageRow& row, Date made);

/// `2 to 3 months`, `12 months`, `3 to 4 weeks`.
std::string span_text(const StorageRow& row);

/// The sort of a kind of food; FoodKind::Other for one the table does not know.
FoodKind kind_of(const StorageTable& table, std::string_view food);

/// Whether a mixed dish holds as much water as a soup: only where all its classes do. Where some
/// do, or none is named, it may be either.
Wetness wetness_of(const StorageTable& table, std::span<const std::string> foods);
/// The same of a dish, which may be as wet as a soup where its name says that it is one.
Wetness wetness_of(const StorageTable& table, const Package& package);

/// Whether all that `food` names is eaten as it comes out of the freezer, and nothing is cooked.
/// Words of the dish alone do not say so: a parfait may be of liver.
bool is_eaten_frozen(const StorageTable& table, const Package& package);

/// Whether food of this kind goes into the bag raw, so that whoever opens it must know.
bool is_raw(FoodKind kind);

/// Whether any of `foods` is of a kind that spoils.
bool any_spoils(const StorageTable& table, std::span<const std::string> foods);

/// Whether any of `foods` is raw: a kit with one raw part is raw, whatever else is in it.
bool any_raw(const StorageTable& table, std::span<const std::string> foods);

/// Whether more than quality is at stake where food of this kind is frozen.
bool is_dangerous(const StorageTable& table, std::string_view food);

/// The row of a food that should not be frozen; nothing for any other.
std::optional<UnsuitableRow> find_unsuitable(const StorageTable& table, std::string_view food);

} // namespace thawslip::kitchen

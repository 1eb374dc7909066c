#pragma once

#include "kitchen/day.h"
#include "kitchen/storage/storage.h"

#include <chrono>
#include <optional>
#include <string_view>
#include <vector>

namespace thawslip::kitchen {

/// Whose table of safe temperatures is asked.
enum class MinimumList { Us, Canada, Uk };

/// What the publishers' rows are about. One kind of food can be several: a raw cut is `Pork` or
/// `BeefOrLamb` where its words say so.
enum class Matter {
    CookedDish,
    Leftover,
    ReadyToEat,
    CookedHam,
    EggDish,
    RawEgg,
    RawGround,
    RawPoultry,
    WholePoultry,
    RawCut, ///< of an animal that the words do not name
    Pork,
    BeefOrLamb,
    Game,
    RawFish,
    RawShellfish,
    Stuffed, ///< raw meat or fish with something inside, or inside something
    Bacon,
    Vegetable,
};
inline constexpr auto last_matter = Matter::Vegetable;

/// The lowest temperature, in the middle of the food, at which it is safe to eat: one row of one
/// publisher.
struct SafeMinimum {
    Matter matter = Matter::CookedDish;
    MinimumList list = MinimumList::Us;
    int celsius = 0;              ///< as the publisher prints it: 71 for 160 °F
    int fahrenheit = 0;           ///< as the publisher prints it
    std::chrono::minutes rest{0}; ///< must stand this long before it is cut
    bool time_counts = false;     ///< only with the time that `needed_hold` gives
    std::string_view row;         ///< the publisher's name for it
    std::string_view source;      ///< publisher, title, year
    std::string_view status;      ///< "read", "read in a copy", "mapping ours"
};

/// The minimum that counts for a dish, and those of the other publishers beside it.
struct CountedMinimum {
    SafeMinimum counts;
    std::vector<SafeMinimum> beside;
};

/// The table that goes with a list of storage life: that of the same country, else the US one.
MinimumList minimum_list(std::string_view rule_set);

/// One publisher's row; nothing where it prints no temperature for this.
std::optional<SafeMinimum> published_minimum(Matter matter, MinimumList list);

/// What a class of food is to the publishers. Words only ever make it stricter, but for beef and
/// lamb, for which some publishers ask less than for pork.
std::optional<Matter> matter_of(const StorageTable& table, std::string_view food,
                                const Package& package);

/// The highest minimum of a dish's classes: what is inside together must reach it. Where the
/// publisher that is asked has no row, the strictest of the others stands in. Raw food in the
/// microwave must reach 165 °F in all parts (FDA Food Code 3-401.12). Nothing for a dish without a
/// class, or only of such as have no published temperature.
std::optional<CountedMinimum> counted_minimum(const StorageTable& table, const Package& package);
std::optional<SafeMinimum> safe_minimum(const StorageTable& table, const Package& package);

/// Whether a target temperature reaches the minimum as the publisher prints it, in either scale:
/// 71 °C and 160 °F pass for 160 °F, 74 °C and 73.9 °C for 165 °F, 73 °C does not. With a holding
/// time, what the publisher prints as its equal passes too.
bool reaches(double target_celsius, const SafeMinimum& minimum,
             std::optional<std::chrono::seconds> held = std::nullopt);

/// How long food must stay at `celsius` where time counts: the time printed beside the next lower
/// temperature, never one between. Nothing below the lowest.
std::optional<std::chrono::seconds> needed_hold(double celsius);

} // namespace thawslip::kitchen

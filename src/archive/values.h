#pragma once

#include "kitchen/day.h"
#include "kitchen/keep_until.h"

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace thawslip::archive {

/// Where a bag is: in the freezer, out of it to thaw, or gone.
enum class State { Frozen, Out, Eaten, Thrown };

inline constexpr std::array<std::pair<kitchen::ThawMethod, std::string_view>, 4> thaw_words = {
    {{kitchen::ThawMethod::Refrigerator, "refrigerator"},
     {kitchen::ThawMethod::ColdWater, "cold water"},
     {kitchen::ThawMethod::Microwave, "microwave"},
     {kitchen::ThawMethod::FromFrozen, "from frozen"}}};

inline constexpr std::array<std::pair<kitchen::DateBasis, std::string_view>, 2> basis_words = {
    {{kitchen::DateBasis::SetByCook, "use by"}, {kitchen::DateBasis::StorageTable, "best"}}};

inline constexpr std::array<std::pair<State, std::string_view>, 4> state_words = {
    {{State::Frozen, "frozen"},
     {State::Out, "out"},
     {State::Eaten, "eaten"},
     {State::Thrown, "thrown"}}};

std::string_view word_of(kitchen::ThawMethod method);
std::optional<kitchen::ThawMethod> thaw_method_of(std::string_view word);

std::string_view word_of(kitchen::DateBasis basis);
std::optional<kitchen::DateBasis> basis_of(std::string_view word);

std::string_view word_of(State state);
std::optional<State> state_of(std::string_view word);

/// What makes a food safe or unsafe for somebody, as the archive compares it: two bags that differ
/// in it are never taken for one.
struct FoodRecord {
    std::vector<std::string> allergens; ///< as they are meant, sorted: "tree nuts (walnut)"
    std::vector<std::string> classes;   ///< storage classes, sorted: "soup or stew"
    friend bool operator==(const FoodRecord&, const FoodRecord&) = default;
};

/// How a bag is thawed, as its label says.
struct ThawRecord {
    kitchen::ThawMethod method = kitchen::ThawMethod::Refrigerator;
    std::optional<std::chrono::minutes> lead; ///< before cooking; nothing: not known
    friend bool operator==(const ThawRecord&, const ThawRecord&) = default;
};

/// What a print says of one dish and its bags. What is optional and not of the cook's choice was
/// not kept by schema 1.
struct PackageRecord {
    std::string dish;
    std::string words; ///< the dish as it is searched for: unicode::fold_for_search
    kitchen::Date made;
    kitchen::Date keep_until;
    kitchen::DateBasis basis = kitchen::DateBasis::SetByCook;
    int servings = 0;                    ///< of one bag
    std::optional<kitchen::Mass> weight; ///< of one bag
    std::optional<FoodRecord> food;
    std::optional<ThawRecord> thaw;
    std::vector<std::string> bags; ///< ids, as printed
    friend bool operator==(const PackageRecord&, const PackageRecord&) = default;
};

/// One description of a day, as it was printed.
struct DayRecord {
    kitchen::Date made;
    std::string kitchen;
    std::string file;        ///< where it was read from; helps to know an edited one again
    std::string description; ///< byte for byte
    std::vector<PackageRecord> packages;
    friend bool operator==(const DayRecord&, const DayRecord&) = default;
};

/// A file of the cook's own that a print was made with.
struct SetupFile {
    std::string name; ///< as PrintSetup::stock or PrintSetup::layout
    std::string text; ///< byte for byte
    friend bool operator==(const SetupFile&, const SetupFile&) = default;
};

/// How something was printed. Of `settings` and `look` the archive only knows that they are text.
struct PrintSetup {
    std::string what;                  ///< "labels", "cards", "finishing cards", "cook-day cards"
    std::string stock;                 ///< a name, or a file
    std::string layout;                ///< the same; empty: chosen by the cell's shape
    std::string settings;              ///< all else that the same bytes need
    std::string look;                  ///< hashes of stock, layouts and faces, one a line
    std::vector<SetupFile> files = {}; ///< what `stock` and `layout` were, where they are files
    friend bool operator==(const PrintSetup&, const PrintSetup&) = default;
};

struct PrintRecord {
    std::string at; ///< the kitchen's date and time: `2026-10-17T14:05:00`
    PrintSetup setup;
    std::vector<DayRecord> days;
};

/// What recording a print changed.
struct Recorded {
    bool print_is_new = false;
    bool is_first_print = false; ///< nothing had been printed into this archive before
    int new_days = 0;  ///< descriptions never seen before
    int revisions = 0; ///< edited descriptions of known ones
    int new_bags = 0;
    std::vector<std::pair<std::string, std::string>> renamed; ///< old id, new id of the same bag
    std::vector<std::string> dropped; ///< ids that the edited description no longer has
    /// Ids of known bags whose allergens or storage classes are others now: what their old labels
    /// say is wrong.
    std::vector<std::string> relabelled;
};

/// A day's place in the archive, good as long as the archive is open.
enum class DayKey : std::int64_t {};

/// A bag as the newest revision describes it.
struct Bag {
    std::string id; ///< the newest, as printed
    std::string dish;
    int servings = 0;
    kitchen::Date made;
    kitchen::Date keep_until;
    kitchen::DateBasis basis = kitchen::DateBasis::SetByCook;
    std::optional<kitchen::Mass> weight;
    std::optional<ThawRecord> thaw;     ///< nothing: recorded by schema 1, which did not keep it
    std::vector<std::string> classes{}; ///< of food, sorted; none: not kept, or not known
    int number = 1;                     ///< bag `number` of `of`
    int of = 1;
    State state = State::Frozen;
    std::string changed; ///< when it came into that state
    DayKey day{};
};

struct StoredDay {
    DayKey key{};
    int lineage = 0;  ///< the same for all revisions of one description
    int revision = 1; ///< counts up
    kitchen::Date made;
    std::string kitchen;
    std::string file;
    std::string recorded;
    std::string description;
};

struct StoredPrint {
    std::string first_at;
    std::string last_at; ///< when the same was last printed again
    PrintSetup setup;
    std::vector<DayKey> days; ///< in the order printed
};

} // namespace thawslip::archive

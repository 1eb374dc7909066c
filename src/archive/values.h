#pragma once

#include "kitchen/bag_id.h"
#include "kitchen/day.h"
#include "kitchen/storage/keep_until.h"

#include <array>
#include <chrono>
#include <cstdint>
#include <optional>
#include <set>
#include <string>
#include <string_view>
#include <utility>
#include <vector>

namespace thawslip::archive {

/// Where a bag is: in the freezer, out of it to thaw, or gone. A label without a bag was never
/// filled; a bag that is known by the id of another is renamed, and what is asked of it is asked
/// of that one.
enum class State { Frozen, Out, Eaten, Discarded, NeverFilled, Renamed };

inline constexpr std::array<std::pair<kitchen::ThawMethod, std::string_view>, 4> thaw_words = {
    {{kitchen::ThawMethod::Refrigerator, "refrigerator"},
     {kitchen::ThawMethod::ColdWater, "cold water"},
     {kitchen::ThawMethod::Microwave, "microwave"},
     {kitchen::ThawMethod::FromFrozen, "from frozen"}}};

inline constexpr std::array<std::pair<kitchen::DateBasis, std::string_view>, 2> basis_words = {
    {{kitchen::DateBasis::SetByCook, "use by"}, {kitchen::DateBasis::StorageTable, "best"}}};

/// As files have them: "thrown" has stood there for what is discarded since the first schema.
inline constexpr std::array<std::pair<State, std::string_view>, 6> state_words = {
    {{State::Frozen, "frozen"},
     {State::Out, "out"},
     {State::Eaten, "eaten"},
     {State::Discarded, "thrown"},
     {State::NeverFilled, "never filled"},
     {State::Renamed, "renamed"}}};

std::string_view word_of(kitchen::ThawMethod method);
std::optional<kitchen::ThawMethod> thaw_method_of(std::string_view word);

std::string_view word_of(kitchen::DateBasis basis);
std::optional<kitchen::DateBasis> basis_of(std::string_view word);

std::string_view word_of(State state);
std::optional<State> state_of(std::string_view word);

/// A state as it is told: "discarded", whatever files say.
std::string_view shown_word(State state);

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
    kitchen::Batch batch = {};     ///< with dish and day what the ids are made from
    /// Which print the batch was first recorded by, in whatever archive that was: equal for two
    /// batches only where they are one. Given by the archive.
    std::string origin = {};
    std::string place = {}; ///< where its bags lie, as the cook described it; may be empty
    friend bool operator==(const PackageRecord&, const PackageRecord&) = default;
};

/// One description of a day, as it was printed.
struct DayRecord {
    kitchen::Date made;
    std::string kitchen;
    std::string file;        ///< where it was read from; empty: no file that lasts
    std::string description; ///< byte for byte
    std::vector<PackageRecord> packages;
    std::string station = {}; ///< whose files `file` is one of: Station::name
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

/// The computer that something happens at, and its clocks.
struct Station {
    std::string name = {}; ///< the same for all that this computer records, and for no other
    /// Seconds since 1970 by its clock; nothing: taken from the local time that stands beside it.
    std::optional<std::int64_t> clock = std::nullopt;
    /// What must be added to `clock` for the true time, by the last reference that all stations
    /// share, in seconds; 0 where there was none.
    std::int64_t offset = 0;
    std::string boot = {};   ///< which run of the system this is (proc(5), boot_id); may be empty
    std::int64_t uptime = 0; ///< seconds since that began: CLOCK_BOOTTIME (clock_gettime(2))
};

/// What happens to a bag. What is nothing stays as it is.
struct BagChange {
    std::optional<State> state = std::nullopt;
    std::optional<std::string> place = std::nullopt; ///< where it lies by now; empty: unknown
    std::string joined = {}; ///< with State::Renamed: an id of the bag that it is
    std::int64_t undoes = 0; ///< `seq` of the station's command that it takes back; 0: none
    friend auto operator<=>(const BagChange&, const BagChange&) = default;
};

/// That something happened to a bag: never changed and never deleted. The state that it is in is
/// the one of the last event that has a state, by `ordered`, and so is its place; what was undone
/// does not count.
struct BagEvent {
    /// When it happened, in thousandths of a second since 1970: the station's clock with its
    /// offset, but later than all that the archive knew of the bag when it was noted.
    std::int64_t ordered = 0;
    std::string station;
    std::int64_t seq = 0;                       ///< counts up at the station, one for each command
    std::optional<State> state = State::Frozen; ///< nothing: as before
    std::string at;          ///< the kitchen's date and time, as the station showed it
    std::int64_t clock = 0;  ///< as Station
    std::int64_t offset = 0; ///< as Station
    std::string boot = {};
    std::int64_t uptime = 0;
    std::optional<std::string> place = std::nullopt; ///< as BagChange
    std::string joined = {};                         ///< as BagChange
    std::int64_t undoes = 0; ///< `seq` of the station's command that it takes back; 0: none
    friend auto operator<=>(const BagEvent&, const BagEvent&) = default;
};

/// That a file is a station's copy of an archive on a server: what is printed and noted is kept in
/// it first and sent then. Its new batches get numbers that no other station gives.
struct Link {
    std::string address;    ///< of the server, as messages show it
    std::string asked;      ///< when it was last reached: the kitchen's date and time; empty: never
    std::int64_t tried = 0; ///< when that was last tried, in seconds since 1970
    friend bool operator==(const Link&, const Link&) = default;
};

/// Where the last print on a stock stopped.
struct UsedSheet {
    std::string stock;        ///< its name
    int next_cell = 1;        ///< the first cell that is free, from 1; 1: the sheet is used up
    std::vector<int> skipped; ///< cells from there on that cannot be used, in order
    std::string at;           ///< the kitchen's date and time
    friend bool operator==(const UsedSheet&, const UsedSheet&) = default;
};

/// What the cook says of dishes that the archive knows bags of already.
struct WhichBatch {
    enum class Kind {
        AsKnown, ///< nothing: what is not sure is asked
        New,     ///< those that are not sure, or if all are, all of them, are another batch
        OfBag,   ///< those of the batches that `bags` are of; what else is not sure is asked
    };
    Kind kind = Kind::AsKnown;
    /// One of the ids of a bag of each batch that is described. With New, what is not sure of the
    /// other dishes is new.
    std::vector<std::string> bags = {};
};

struct PrintRecord {
    std::string at; ///< the kitchen's date and time: `2026-10-17T14:05:00`
    PrintSetup setup;
    std::vector<DayRecord> days;
    Station station = {};
    WhichBatch which = {}; ///< as it was settled
    /// Made once for one print, so that recording it twice counts once; empty: made from the rest.
    std::string key = {};
    std::optional<UsedSheet> sheet = {}; ///< where it stopped
    /// The bags that it is of; nothing: all of its days. The others are known, and never filled
    /// before a print is of them.
    std::optional<std::vector<std::string>> part = {};
};

/// A batch that a package may be, but need not.
struct KnownBatch {
    std::string bag; ///< the first of its bags
    int bags = 0;
    int servings = 0; ///< of one bag
    std::string file;
    std::string kitchen;
    std::string recorded;
};

/// A dish of a description of which it is not known which batch it is.
struct Doubt {
    std::size_t package = 0; ///< index into DayRecord::packages
    std::vector<KnownBatch> known;
};

/// Which batches the packages of a description are.
struct Settled {
    std::vector<kitchen::Batch> batches; ///< of each package, in order
    std::vector<Doubt> doubts;           ///< for the cook to say
    std::set<std::string> fits;          ///< of the bags that the cook named: of a dish described
};

/// What recording a print changed.
struct Recorded {
    bool is_known = false; ///< this very print was recorded before: nothing changed
    bool print_is_new = false;
    bool is_first_print = false; ///< nothing had been printed into this archive before
    int new_days = 0;            ///< descriptions never seen before
    int revisions = 0;           ///< edited descriptions of known ones
    int new_bags = 0;
    std::vector<std::pair<std::string, std::string>> renamed; ///< old id, new id of the same bag
    std::vector<std::string> dropped; ///< ids that the edited description no longer has
    /// Ids of known bags whose allergens or storage classes are others now, or whose date to be
    /// used by is sooner: what their old labels say is wrong.
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
    /// As they are meant, sorted; those that may be there by chance after "may contain "; nothing:
    /// not kept.
    std::optional<std::vector<std::string>> allergens = std::nullopt;
    int number = 1; ///< bag `number` of `of`
    int of = 1;
    State state = State::Frozen;
    std::string changed; ///< when it came into that state
    DayKey day{};
    int size = 0;           ///< Batch::size: which of its dish's sizes it is
    std::string place = {}; ///< where it lies: where it was last moved to, else as described
};

/// An event of a bag's history, and the id of the bag that it was noted of: a bag that was renamed
/// has the history of both.
struct PastEvent {
    std::string id;
    BagEvent event;
    bool is_undone = false;
};

/// A bag that a command was taken back of.
struct UndoneBag {
    Bag before; ///< as it was until now
    Bag after;
    BagEvent undone; ///< what does not count any longer
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
    std::vector<kitchen::Batch> batches; ///< of its packages, in order
    /// Whether the description is no longer what was recorded: nothing may be said by it.
    bool is_rotten = false;
};

struct StoredPrint {
    std::string first_at;
    std::string last_at; ///< when the same was last printed again
    PrintSetup setup;
    std::vector<DayKey> days; ///< in the order printed
    int times = 0;            ///< how often it was printed
};

} // namespace thawslip::archive

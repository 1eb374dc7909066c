#pragma once

#include "archive/values.h"

#include <cstddef>
#include <optional>
#include <string>
#include <vector>

namespace thawslip::archive {

/// All that an archive holds, as plain values without keys: what is exported, and what two
/// archives are merged by.
struct Contents {
    struct Day {
        int lineage = 0;
        int revision = 1;
        std::string recorded;
        std::int64_t ordered = 0; ///< more in each revision: see order_after (rows.h)
        DayRecord record;         ///< without the bags' ids, which stand in `bags`
        friend bool operator==(const Day&, const Day&) = default;
    };
    struct Bag {
        std::vector<std::string> ids; ///< the newest first
        std::size_t day = 0;          ///< index into `days`
        int position = 1;             ///< of the package within the day
        int number = 1;
        std::vector<BagEvent> events; ///< in their order, at least one
        friend bool operator==(const Bag&, const Bag&) = default;
    };
    /// One time that something was printed.
    struct Key {
        std::string key;
        std::string at;
        std::string station;
        friend bool operator==(const Key&, const Key&) = default;
    };
    struct Print {
        std::string first_at;
        std::string last_at;
        PrintSetup setup;
        std::vector<std::size_t> days; ///< indexes into `days`
        std::vector<Key> keys;         ///< sorted by key
        friend bool operator==(const Print&, const Print&) = default;
    };
    std::vector<Day> days;
    std::vector<Bag> bags;
    std::vector<Print> prints;
    friend bool operator==(const Contents&, const Contents&) = default;
};

class Connection;
/// All that the archive holds, inside a transaction of the caller.
Contents contents_of(Connection& connection);

/// What a merge added.
struct Merged {
    int days = 0;
    int bags = 0;
    int prints = 0;
    int states = 0; ///< bags known to both whose later state came from the other
    /// Bags that were left out: an id that here sticks on another bag, or may. (Two kitchens that
    /// have neither name nor number give bags of one dish and day the same ids.)
    std::vector<std::string> clashes;
};

/// Gives contents of before there were batches and events, which lack origin, order, events and
/// keys, what a migration of their archive would give them. \param states of `bags`, in order
struct BagState {
    State state = State::Frozen;
    std::string changed;
};
void complete(Contents& contents, const std::vector<BagState>& states);

/// What of `contents` cannot be: a bag without an id, an id twice, a day or a package that is not
/// there. Nothing where all is well.
std::optional<std::string> fault_in(const Contents& contents);

} // namespace thawslip::archive

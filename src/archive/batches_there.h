#pragma once

#include "archive/tables/connection.h"
#include "archive/values.h"

#include <string>
#include <vector>

namespace thawslip::archive {

// Which batches there are of the dishes of a day: asked of many packages at once.

/// A batch with the name and day of a package.
struct Candidate {
    kitchen::Batch batch;
    std::string origin;
    int lineage = 0; ///< of the newest revision that describes its bags
    KnownBatch known;
};

/// Of each package of a day those that have bags, of the newest descriptions first.
std::vector<std::vector<Candidate>> all_candidates(Connection& connection, const DayRecord& day);

/// A batch by all that makes it one: what its bags' ids are made from, but for their numbers.
struct NamedBatch {
    std::string dish;
    std::string made;
    kitchen::Batch batch;
    friend bool operator==(const NamedBatch&, const NamedBatch&) = default;
};

/// The batches there are of the names and days of a day's packages, with bags and without.
std::vector<NamedBatch> all_taken(Connection& connection, const DayRecord& day);

/// Has what both ask sent with the next question.
void ask_batches_ahead(Connection& connection, const DayRecord& day);

} // namespace thawslip::archive

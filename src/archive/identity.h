#pragma once

#include "archive/tables/connection.h"
#include "archive/tables/rows.h"
#include "archive/values.h"

#include <cstdint>
#include <set>
#include <string>
#include <vector>

namespace thawslip::archive {

// Which batches the packages of a description are: the one place where that is decided, for what
// is printed and for what is recorded. DEVELOPERS.md, "The same bags", has the rules in words.

/// One package of a description.
struct Identified {
    kitchen::Batch batch;
    std::string origin;      ///< empty: the batch is new
    std::int64_t mended = 0; ///< the row of the older package whose name this one mends, or 0
};

struct Decision {
    int lineage = 0;            ///< whose next revision the description is; 0: a new one's first
    std::int64_t newest = 0;    ///< row of the newest revision there is of it, or 0
    bool is_newest = false;     ///< it is that very revision: nothing is to be added
    bool is_another = false;    ///< the cook says so: what its file described before is still there
    std::set<std::string> fits; ///< of the bags that the cook named: of a dish described here
    std::vector<Identified> packages;
    std::vector<Doubt> doubts;
};

/// \param ids of ids that were asked about already: others that the day may want are asked
Decision decide(Connection& connection, const DayRecord& day, const WhichBatch& which,
                const IdRows& ids);
/// Has what that asks of a description that is new sent with the next question.
void ask_decision_ahead(Connection& connection, const DayRecord& day);

/// Whether a bag that has an id of `package`, of a description of `lineage`, is of its batch: both
/// were first recorded by one print, or a merge took the one print's bags for the other's.
bool is_of_batch(Connection& connection, std::int64_t bag, const PackageRecord& package,
                 int lineage);

} // namespace thawslip::archive

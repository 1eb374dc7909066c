#pragma once

#include "archive/contents.h"
#include "archive/tables/connection.h"

#include <cstdint>
#include <set>

namespace thawslip::archive {

/// A part of what an archive holds, by its rows.
struct Part {
    std::set<int> lineages;        ///< whose descriptions are read, with every revision
    std::set<std::int64_t> days;   ///< of which all bags are read
    std::set<std::int64_t> bags;   ///< that are read besides
    std::set<std::int64_t> prints; ///< their days are of `lineages`
};

/// That part as contents, which can be merged; inside a transaction of the caller. Where it is
/// nearly everything, more.
Contents contents_of(Connection& connection, const Part& part);

/// What `from` has and `to` has not.
Part part_missing(Connection& from, Connection& to);

} // namespace thawslip::archive

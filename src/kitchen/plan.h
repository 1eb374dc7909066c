#pragma once

#include "base/diagnostic.h"
#include "kitchen/day.h"
#include "kitchen/storage.h"

#include <string>
#include <vector>

namespace thawslip::kitchen {

/// What a caution does: severities in rising order.
enum class CautionLevel { Check, Card, LabelAndCard, Refuse };

/// A rule that applies. Its words stand in the wording tables under `caution.<id>`, where
/// `{0}`, `{1}`… take the values; kitchen knows no language.
struct Caution {
    std::string id;
    CautionLevel level = CautionLevel::Check;
    std::vector<std::string> values;
    std::string source; ///< publisher and title
    KeyPath where;
};

/// How the printed date came about: the difference between "Use by" and "Best if used by".
enum class DateBasis { SetByCook, StorageTable };

struct KeepUntil {
    Date date;
    DateBasis basis = DateBasis::SetByCook;
    std::optional<StorageRow> row; ///< the row that gave the date, for StorageTable
};

struct Bag {
    std::string id; ///< as printed, with its check character: see bag_id.h
    int number = 1; ///< bag `number` of `of`
    int of = 1;
};

/// A package with everything worked out that a print can say.
struct PlannedPackage {
    Package package;
    Date made;
    KeepUntil keep_until;
    std::vector<Bag> bags;
    std::vector<Finish> finish; ///< ordered by when they go in
    std::vector<Caution> cautions;
};

struct Plan {
    std::string kitchen;
    Date made;
    std::vector<PlannedPackage> packages;
};

/// Works out dates, ids, order and cautions. Pure: reads no clock and no file.
///
/// What the cook must mend (a storage class nobody knows, a use-by before the day it was made,
/// a caution of level Refuse) is appended to `faults` with its key path and no file; the package
/// is then left out of the plan.
Plan plan(const Day& day, const StorageTable& table, Diagnostics& faults);

} // namespace thawslip::kitchen

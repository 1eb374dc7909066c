#pragma once

#include "base/key_path.h"
#include "kitchen/day.h"

#include <string>
#include <vector>

namespace thawslip::kitchen {

/// What a caution does: severities in rising order. `Report` is said on the terminal by every
/// command that prints, `Check` by `check` alone.
enum class CautionLevel { Check, Report, Card, LabelAndCard, Refuse };

/// A rule that applies. Its words stand in the wording tables under `caution.<id>`, where
/// `{0}`, `{1}`… take the values; kitchen knows no language. Words of level Card and LabelAndCard
/// are sentences; those of Report and Check are messages: lower case, no full stop.
struct Caution {
    std::string id;
    CautionLevel level = CautionLevel::Check;
    std::vector<std::string> values;
    std::string source; ///< publisher and title
    KeyPath where;
    /// Which of several ways to thaw it is for, where it is not for the first; else none.
    std::vector<ThawMethod> thawed_by = {};
};

} // namespace thawslip::kitchen

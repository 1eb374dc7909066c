#pragma once

#include "archive/values.h"
#include "kitchen/plan.h"
#include "service/now.h"

#include <chrono>
#include <functional>
#include <optional>
#include <vector>

namespace thawslip::service {

struct NextQuestion {
    int count = 5; ///< days, from tomorrow on
    std::chrono::minutes at = std::chrono::hours{18} + std::chrono::minutes{30}; ///< to eat
};

/// A bag and the day it is to be eaten.
struct Proposal {
    kitchen::LocalMinute eat;
    archive::Bag bag;
    std::optional<kitchen::ThawMethod> method = {};      ///< nothing: the label knows
    std::optional<kitchen::LocalMinute> thaw_start = {}; ///< nothing: not thawed, or not known
    std::optional<kitchen::TimeRange> thaw_time = {};
    std::optional<std::chrono::days> cook_within = {};
};

/// What is proposed, and what is not.
struct Menu {
    std::vector<Proposal> proposals;
    std::vector<kitchen::LocalMinute> without; ///< meals that nothing can be thawed for
    int past = 0;                              ///< bags past the date on their label
    int too_many = 0;                          ///< bags whose date comes before their turn
};

/// What a bag was filled with; nullptr where that cannot be read any longer.
using PackageOf = std::function<const kitchen::PlannedPackage*(const archive::Bag&)>;

/// What to eat on the coming days and when to start thawing it: each day the bag with the soonest
/// date that can still be thawed as its label says.
/// \param frozen the bags of the freezer, the soonest date first
Menu freezer_next(std::vector<archive::Bag> frozen, const PackageOf& package_of,
                  const NextQuestion& question, const Now& now, const kitchen::ThawSettings& thaw);

} // namespace thawslip::service

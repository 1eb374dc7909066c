#pragma once

#include "kitchen/day.h"

#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::kitchen {

/// One bag that goes into the freezer, under the label it is known by.
struct BagToFreeze {
    std::string label;
    std::optional<Mass> weight;
};

/// Bags that go in together; the next batch waits in the refrigerator for 24 h.
struct FreezerBatch {
    std::vector<std::string> bags; ///< in the order in which they were given
    Mass weight;
};

enum class LoadVerdict {
    Within, ///< at most the prudent limit: all at once
    Near,   ///< between the two limits: all at once, spread out, if the freezer is a cold one
    Over,   ///< in batches, a day apart
};

struct FreezerLoad {
    Mass total;      ///< of the bags with a weight
    Mass limit_low;  ///< 2 lb per cubic foot of capacity in 24 h
    Mass limit_high; ///< 3 lb per cubic foot
    LoadVerdict verdict = LoadVerdict::Within;
    std::vector<FreezerBatch> batches; ///< each within `limit_high`, except a bag heavier than it
    std::vector<std::string> without_weight; ///< could not be counted, and are in no batch
    std::vector<std::string> too_heavy;      ///< each over the limit by itself: make it smaller
};

/// Checks a day's bags against what a freezer can freeze in 24 h, 2–3 lb per cubic foot of its
/// capacity (32–48 g per litre), and sorts them into few batches: the heaviest bags first, each
/// into the first batch that has room.
///
/// Limit: USDA, "Canning, Freezing, Storing Garden Produce"; West Virginia University Extension,
/// "Freezing Guidelines"; Clemson HGIC 3065, "Freezing Prepared Foods".
/// \param litres capacity of the freezer; one that is not positive can take nothing
FreezerLoad freezer_load(double litres, std::span<const BagToFreeze> bags);

} // namespace thawslip::kitchen

#pragma once

#include "kitchen/day.h"

#include <chrono>
#include <cstddef>
#include <map>
#include <optional>
#include <span>
#include <string>
#include <vector>

namespace thawslip::kitchen {

/// One bag that goes into the freezer, under the label it is known by.
struct BagToFreeze {
    std::string label;
    std::optional<Mass> weight;
    std::size_t dish = 0;          ///< bags of one dish go in together where they can
    std::chrono::days may_wait{0}; ///< in the refrigerator, from the packing day on
    bool raw = false;              ///< finds room before what may wait as long but is cooked
};

/// Bags that go in together.
struct FreezerBatch {
    std::vector<std::string> bags; ///< in the order in which they were given
    Mass weight;
};

enum class LoadVerdict {
    Within, ///< at most the prudent limit: all at once
    Near,   ///< between the two limits: all at once, spread out, if the freezer is a cold one
    Over,   ///< in batches, a day apart, as far as the bags may wait
};

/// Every bag is in exactly one of `batches`, `elsewhere`, `too_heavy` and `without_weight`.
struct FreezerLoad {
    Mass total;      ///< of the bags with a weight
    Mass limit_low;  ///< 2 lb per cubic foot of capacity in 24 h
    Mass limit_high; ///< 3 lb per cubic foot
    LoadVerdict verdict = LoadVerdict::Within;
    /// The first goes in on the packing day, each further one 24 h after the one before; each is
    /// within `limit_high`.
    std::vector<FreezerBatch> batches;
    std::vector<std::string> elsewhere; ///< no room before they have waited as long as they may
    Mass elsewhere_weight;
    std::vector<std::string> too_heavy;      ///< each over the limit by itself: make it smaller
    std::vector<std::string> without_weight; ///< could not be counted
};

/// Checks a day's bags against what a freezer can freeze in 24 h, 2–3 lb per cubic foot of its
/// capacity (32–48 g per litre), and sorts them into batches: what may wait least first, the bags
/// of a dish together where they can be, and of those that may wait as long what is raw first,
/// unless that takes more days. No bag is put into a batch for which it would have to wait longer
/// than it may. Where some would have to go elsewhere, the plan counts that leaves out the least
/// raw food, then the least in all: by whole dishes or by single bags, the heaviest first of those
/// that may wait as long, or the raw.
///
/// Limit: USDA, "Canning, Freezing, Storing Garden Produce"; West Virginia University Extension,
/// "Freezing Guidelines"; Clemson HGIC 3065, "Freezing Prepared Foods".
/// \param litres capacity of the freezer; one that is not positive can take nothing
FreezerLoad freezer_load(double litres, std::span<const BagToFreeze> bags);

/// Whether none of the bags that have a weight is left out.
bool can_freeze_all(const FreezerLoad& load);

/// How long each bag of a batch waits for it.
std::map<std::string, std::chrono::days> waits_of(const FreezerLoad& load);

} // namespace thawslip::kitchen

#include "kitchen/freezer_load.h"

#include <algorithm>
#include <cstddef>

namespace thawslip::kitchen {

namespace {

// Exact by definition: 1 lb = 453.59237 g, 1 ft³ = 28.316846592 l.
constexpr double grams_per_litre_for_a_pound_per_cubic_foot = 453.59237 / 28.316846592;

/// Bags by their place in the list, so that a batch can be told in the cook's own order.
struct OpenBatch {
    std::vector<std::size_t> places;
    double grams = 0.0;
};

/// First fit, decreasing: never more than 11/9 of the least number of batches, and a bag. Equal
/// bags keep their order. (D. S. Johnson, "Near-optimal bin packing algorithms", 1973.)
std::vector<OpenBatch> fill_batches(std::span<const BagToFreeze> bags,
                                    std::vector<std::size_t> places, double limit) {
    std::stable_sort(places.begin(), places.end(), [&](std::size_t a, std::size_t b) {
        return bags[a].weight->grams > bags[b].weight->grams;
    });
    std::vector<OpenBatch> batches;
    for (const std::size_t place : places) {
        const double grams = bags[place].weight->grams;
        auto batch = std::find_if(batches.begin(), batches.end(), [&](const OpenBatch& open) {
            return open.grams + grams <= limit;
        });
        if (batch == batches.end())
            batch = batches.insert(batches.end(), OpenBatch{});
        batch->places.push_back(place);
        batch->grams += grams;
    }
    return batches;
}

LoadVerdict judge(const FreezerLoad& load) {
    if (load.total > load.limit_high)
        return LoadVerdict::Over;
    return load.total > load.limit_low ? LoadVerdict::Near : LoadVerdict::Within;
}

} // namespace

FreezerLoad freezer_load(double litres, std::span<const BagToFreeze> bags) {
    FreezerLoad load;
    const double pound_each =
        (litres > 0.0 ? litres : 0.0) * grams_per_litre_for_a_pound_per_cubic_foot;
    load.limit_low = Mass{2.0 * pound_each};
    load.limit_high = Mass{3.0 * pound_each};

    std::vector<std::size_t> weighed;
    for (std::size_t place = 0; place < bags.size(); ++place) {
        const auto& bag = bags[place];
        if (!bag.weight || !(bag.weight->grams > 0.0)) {
            load.without_weight.push_back(bag.label);
            continue;
        }
        weighed.push_back(place);
        load.total.grams += bag.weight->grams;
        if (*bag.weight > load.limit_high)
            load.too_heavy.push_back(bag.label);
    }

    for (auto& open : fill_batches(bags, std::move(weighed), load.limit_high.grams)) {
        std::sort(open.places.begin(), open.places.end());
        FreezerBatch batch{.bags = {}, .weight = Mass{open.grams}};
        for (const std::size_t place : open.places)
            batch.bags.push_back(bags[place].label);
        load.batches.push_back(std::move(batch));
    }
    load.verdict = judge(load);
    return load;
}

} // namespace thawslip::kitchen

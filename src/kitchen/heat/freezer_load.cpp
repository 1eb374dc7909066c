#include "kitchen/heat/freezer_load.h"

#include <algorithm>
#include <tuple>

namespace thawslip::kitchen {

namespace {

// Exact by definition: 1 lb = 453.59237 g, 1 ft³ = 28.316846592 l.
constexpr double grams_per_litre_for_a_pound_per_cubic_foot = 453.59237 / 28.316846592;

using Bags = std::span<const BagToFreeze>;
/// Bags by their place in the list, so that a batch can be told in the cook's own order.
using Places = std::vector<std::size_t>;

/// Bags that should go in together.
struct Group {
    Places places;
    double grams = 0.0;
    std::chrono::days may_wait{0};
    bool raw = false;
};

struct OpenBatch {
    Places places;
    double grams = 0.0;
};

struct Filled {
    std::vector<OpenBatch> batches;
    Places elsewhere;
    double elsewhere_grams = 0.0;
    double raw_elsewhere_grams = 0.0;
};

void leave_out(Filled& filled, const Group& bag) {
    filled.elsewhere.push_back(bag.places.front());
    filled.elsewhere_grams += bag.grams;
    filled.raw_elsewhere_grams += bag.raw ? bag.grams : 0.0;
}

/// Less goes elsewhere, of what is raw and in all; or it takes fewer days.
bool is_better(const Filled& a, const Filled& b) {
    const auto key = [](const Filled& filled) {
        return std::tuple{filled.raw_elsewhere_grams, filled.elsewhere_grams,
                          filled.batches.size()};
    };
    return key(a) < key(b);
}

void add(Group& group, Bags bags, std::size_t place) {
    const auto& bag = bags[place];
    group.may_wait = group.places.empty() ? bag.may_wait : std::min(group.may_wait, bag.may_wait);
    group.places.push_back(place);
    group.grams += bag.weight->grams;
    group.raw = group.raw || bag.raw;
}

std::vector<Group> by_dish(Bags bags, const Places& weighed) {
    std::map<std::size_t, Group> dishes;
    for (const auto place : weighed)
        add(dishes[bags[place].dish], bags, place);
    std::vector<Group> groups;
    for (auto& [dish, group] : dishes)
        groups.push_back(std::move(group));
    return groups;
}

std::vector<Group> one_by_one(Bags bags, const Places& weighed) {
    std::vector<Group> groups(weighed.size());
    for (std::size_t i = 0; i < weighed.size(); ++i)
        add(groups[i], bags, weighed[i]);
    return groups;
}

/// Which of the groups that may wait as long as each other comes first.
enum class First { Heaviest, Raw };

/// What may wait least first; of equals the heaviest, which finds room the worst (first fit,
/// decreasing: D. S. Johnson, "Near-optimal bin packing algorithms", 1973), or what is raw.
void sort_by_urgency(std::vector<Group>& groups, First first) {
    const auto key = [first](const Group& group) {
        return std::tuple{group.may_wait, first == First::Raw && !group.raw, -group.grams};
    };
    std::ranges::stable_sort(groups,
                             [&](const Group& a, const Group& b) { return key(a) < key(b); });
}

/// Puts a group into the first batch with room that it may wait for; whether there was one.
bool put_together(const Group& group, double limit, std::vector<OpenBatch>& batches) {
    for (std::chrono::days wait{0}; wait <= group.may_wait; ++wait) {
        const auto number = static_cast<std::size_t>(wait.count());
        if (number == batches.size())
            batches.emplace_back();
        auto& batch = batches[number];
        if (batch.grams + group.grams <= limit) {
            batch.places.insert(batch.places.end(), group.places.begin(), group.places.end());
            batch.grams += group.grams;
            return true;
        }
    }
    return false;
}

Filled fill_batches(std::vector<Group> groups, Bags bags, double limit, First first) {
    sort_by_urgency(groups, first);
    Filled filled;
    for (const auto& group : groups) {
        if (group.grams <= limit && put_together(group, limit, filled.batches))
            continue;
        auto parts = one_by_one(bags, group.places);
        sort_by_urgency(parts, first);
        for (const auto& part : parts) {
            if (!put_together(part, limit, filled.batches))
                leave_out(filled, part);
        }
    }
    return filled;
}

Filled best_filling(Bags bags, const Places& weighed, double limit) {
    std::optional<Filled> best;
    for (const auto& groups : {by_dish(bags, weighed), one_by_one(bags, weighed)}) {
        for (const auto first : {First::Raw, First::Heaviest}) {
            auto other = fill_batches(groups, bags, limit, first);
            if (!best || is_better(other, *best))
                best = std::move(other);
        }
        if (best->elsewhere.empty())
            break;
    }
    return std::move(*best);
}

std::vector<std::string> labels_of(Places places, Bags bags) {
    std::ranges::sort(places);
    std::vector<std::string> labels;
    for (const auto place : places)
        labels.push_back(bags[place].label);
    return labels;
}

LoadVerdict judge(const FreezerLoad& load) {
    if (load.total > load.limit_high)
        return LoadVerdict::Over;
    return load.total > load.limit_low ? LoadVerdict::Near : LoadVerdict::Within;
}

/// Counts what has a weight, and names what has none or too much of it; the places of the rest.
Places weigh(FreezerLoad& load, Bags bags) {
    Places weighed;
    for (std::size_t place = 0; place < bags.size(); ++place) {
        const auto& bag = bags[place];
        if (!bag.weight || !(bag.weight->grams > 0.0)) {
            load.without_weight.push_back(bag.label);
            continue;
        }
        load.total.grams += bag.weight->grams;
        if (*bag.weight > load.limit_high)
            load.too_heavy.push_back(bag.label);
        else
            weighed.push_back(place);
    }
    return weighed;
}

} // namespace

FreezerLoad freezer_load(double litres, std::span<const BagToFreeze> bags) {
    FreezerLoad load;
    const double pound_each =
        (litres > 0.0 ? litres : 0.0) * grams_per_litre_for_a_pound_per_cubic_foot;
    load.limit_low = Mass{2.0 * pound_each};
    load.limit_high = Mass{3.0 * pound_each};
    const auto weighed = weigh(load, bags);
    auto filled = best_filling(bags, weighed, load.limit_high.grams);
    for (auto& open : filled.batches)
        load.batches.push_back({labels_of(std::move(open.places), bags), Mass{open.grams}});
    load.elsewhere = labels_of(std::move(filled.elsewhere), bags);
    load.elsewhere_weight = Mass{filled.elsewhere_grams};
    load.verdict = judge(load);
    return load;
}

bool can_freeze_all(const FreezerLoad& load) {
    return load.elsewhere.empty() && load.too_heavy.empty();
}

std::map<std::string, std::chrono::days> waits_of(const FreezerLoad& load) {
    std::map<std::string, std::chrono::days> waits;
    for (std::size_t number = 0; number < load.batches.size(); ++number) {
        for (const auto& bag : load.batches[number].bags)
            waits.emplace(bag, number);
    }
    return waits;
}

} // namespace thawslip::kitchen

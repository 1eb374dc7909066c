#include "layout/areas/spread.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

/// Neighbours that have come to stand close together, by the mean of what they want.
struct Pool {
    Length sum;
    double count = 0;
    Length mean() const { return sum / count; }
};

/// Rising values nearest to the given ones.
std::vector<Length> rising(const std::vector<Length>& wanted) {
    std::vector<Pool> pools;
    for (const auto value : wanted) {
        Pool pool{value, 1};
        while (!pools.empty() && pools.back().mean() >= pool.mean()) {
            pool = {pools.back().sum + pool.sum, pools.back().count + pool.count};
            pools.pop_back();
        }
        pools.push_back(pool);
    }
    std::vector<Length> values;
    for (const auto& pool : pools) {
        values.insert(values.end(), static_cast<std::size_t>(pool.count), pool.mean());
    }
    return values;
}

} // namespace

std::vector<Length> spread(const std::vector<Wanted>& all, Length gap, Length from, Length to) {
    std::vector<Length> before; // how much room those before each need
    std::vector<Length> wanted; // the top that is wanted, less that
    Length sum;
    for (const auto& one : all) {
        before.push_back(sum);
        wanted.push_back(one.top - sum);
        sum += one.height + gap;
    }
    const Length last = std::max(from, to - (sum - gap));
    auto tops = rising(wanted);
    for (std::size_t i = 0; i < tops.size(); ++i) {
        tops[i] = std::clamp(tops[i], from, last) + before[i];
    }
    return tops;
}

} // namespace thawslip::layout

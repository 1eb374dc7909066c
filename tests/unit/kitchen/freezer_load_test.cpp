#include "kitchen/freezer_load.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <limits>
#include <map>

using namespace thawslip::kitchen;

namespace {

std::vector<BagToFreeze> bags_of(const std::vector<double>& grams) {
    std::vector<BagToFreeze> bags;
    for (std::size_t i = 0; i < grams.size(); ++i)
        bags.push_back({"B" + std::to_string(i + 1), Mass{grams[i]}});
    return bags;
}

} // namespace

TEST_CASE("9 kg into 85 l is over the limit of 2.7–4.1 kg and freezes in three batches") {
    const auto bags = bags_of({1500, 1500, 1500, 1500, 1500, 1500});
    const auto load = freezer_load(85.0, bags);
    CHECK(load.total.grams == doctest::Approx(9000));
    CHECK(load.limit_low.grams == doctest::Approx(2723).epsilon(0.001));
    CHECK(load.limit_high.grams == doctest::Approx(4085).epsilon(0.001));
    CHECK(load.verdict == LoadVerdict::Over);
    REQUIRE(load.batches.size() == 3);
    CHECK(load.batches[0].bags == std::vector<std::string>{"B1", "B2"});
    CHECK(load.batches[1].bags == std::vector<std::string>{"B3", "B4"});
    CHECK(load.batches[2].bags == std::vector<std::string>{"B5", "B6"});
}

TEST_CASE("2 and 3 lb per cubic foot are 32 and 48 g per litre") {
    // West Virginia University Extension, "Freezing Guidelines".
    const auto load = freezer_load(1.0, {});
    CHECK(load.limit_low.grams == doctest::Approx(32).epsilon(0.005));
    CHECK(load.limit_high.grams == doctest::Approx(48).epsilon(0.005));
    CHECK(load.verdict == LoadVerdict::Within);
    CHECK(load.batches.empty());
}

TEST_CASE("the verdict changes at the two limits") {
    const double pounds_per_cubic_foot = 453.59237; // for a freezer of one cubic foot
    const double litres = 28.316846592;
    CHECK(freezer_load(litres, bags_of({1.9 * pounds_per_cubic_foot})).verdict ==
          LoadVerdict::Within);
    CHECK(freezer_load(litres, bags_of({2.1 * pounds_per_cubic_foot})).verdict ==
          LoadVerdict::Near);
    CHECK(freezer_load(litres, bags_of({2.9 * pounds_per_cubic_foot})).verdict ==
          LoadVerdict::Near);
    CHECK(freezer_load(litres, bags_of({3.1 * pounds_per_cubic_foot})).verdict ==
          LoadVerdict::Over);
}

TEST_CASE("every weighed bag is in exactly one batch, and no batch is over the limit") {
    std::vector<double> grams;
    unsigned state = 12345; // a small fixed sequence of weights from 200 to 2999 g
    for (int i = 0; i < 60; ++i) {
        state = state * 1103515245U + 12345U;
        grams.push_back(200.0 + state / 65536U % 2800U);
    }
    const auto bags = bags_of(grams);
    const auto load = freezer_load(85.0, bags);
    std::map<std::string, int> seen;
    for (const auto& batch : load.batches) {
        CHECK(batch.weight <= load.limit_high);
        for (const auto& bag : batch.bags)
            ++seen[bag];
    }
    CHECK(seen.size() == bags.size());
    CHECK(std::all_of(seen.begin(), seen.end(), [](const auto& s) { return s.second == 1; }));
    // No fewer than the weights allow, and not many more (first fit, decreasing).
    const auto least = load.total.grams / load.limit_high.grams;
    CHECK(static_cast<double>(load.batches.size()) >= least);
    CHECK(static_cast<double>(load.batches.size()) <= least * 11.0 / 9.0 + 1.0);
}

TEST_CASE("a bag that is over the limit by itself is named and goes in alone") {
    const auto load = freezer_load(20.0, bags_of({300, 2000, 400}));
    CHECK(load.too_heavy == std::vector<std::string>{"B2"});
    REQUIRE(load.batches.size() == 2);
    CHECK(load.batches[0].bags == std::vector<std::string>{"B2"});
    CHECK(load.batches[1].bags == std::vector<std::string>{"B1", "B3"});
}

TEST_CASE("a bag without a usable weight is named and not counted") {
    auto bags = bags_of({500, -3, std::numeric_limits<double>::quiet_NaN()});
    bags.push_back({"B4", std::nullopt});
    const auto load = freezer_load(85.0, bags);
    CHECK(load.without_weight == std::vector<std::string>{"B2", "B3", "B4"});
    CHECK(load.total.grams == doctest::Approx(500));
}

TEST_CASE("a freezer without room takes nothing") {
    const auto load = freezer_load(std::numeric_limits<double>::quiet_NaN(), bags_of({500}));
    CHECK(load.verdict == LoadVerdict::Over);
    CHECK(load.too_heavy.size() == 1);
}

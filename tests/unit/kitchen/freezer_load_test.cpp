#include "../../support/random.h"
#include "kitchen/heat/freezer_load.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <limits>
#include <map>

using namespace thawslip::kitchen;
using std::chrono::days;

namespace {

/// Bags of dishes of their own that may wait as long as it takes.
std::vector<BagToFreeze> bags_of(const std::vector<double>& grams, int may_wait = 100) {
    std::vector<BagToFreeze> bags;
    for (std::size_t i = 0; i < grams.size(); ++i)
        bags.push_back({"B" + std::to_string(i + 1), Mass{grams[i]}, i, days{may_wait}});
    return bags;
}

using Names = std::vector<std::string>;
constexpr double litres_for_10_kg = 10010.0 / 48.0554; // 3 lb per cubic foot

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

TEST_CASE("a bag that is over the limit by itself is named and goes into no batch") {
    const auto load = freezer_load(20.0, bags_of({300, 2000, 400}));
    CHECK(load.too_heavy == Names{"B2"});
    REQUIRE(load.batches.size() == 1);
    CHECK(load.batches[0].bags == Names{"B1", "B3"});
}

TEST_CASE("what may wait least goes in first, and its dish together") {
    const std::vector<BagToFreeze> bags = {
        {"stew 1", Mass{3000}, 0, days{3}}, {"stew 2", Mass{3000}, 0, days{3}},
        {"fish 1", Mass{2000}, 1, days{1}}, {"fish 2", Mass{2000}, 1, days{1}},
        {"mince", Mass{1500}, 2, days{0}},
    };
    const auto load = freezer_load(litres_for_10_kg, bags);
    REQUIRE(load.batches.size() == 2);
    CHECK(load.batches[0].bags == Names{"fish 1", "fish 2", "mince"});
    CHECK(load.batches[1].bags == Names{"stew 1", "stew 2"}); // one alone would have had room
    CHECK(load.elsewhere.empty());
    const auto waits = waits_of(load);
    CHECK(waits.at("mince") == days{0});
    CHECK(waits.at("stew 1") == days{1});
}

TEST_CASE("what would wait too long goes elsewhere today, as little of it as can be") {
    std::vector<BagToFreeze> bags;
    for (int i = 0; i < 12; ++i)
        bags.push_back({"mince " + std::to_string(i), Mass{2000}, 0, days{1}});
    const auto load = freezer_load(100.0, bags); // 4.8 kg a day
    REQUIRE(load.batches.size() == 2);
    CHECK(load.batches[0].bags.size() == 2);
    CHECK(load.batches[1].bags.size() == 2);
    CHECK(load.elsewhere.size() == 8);
    CHECK(load.elsewhere_weight.grams == doctest::Approx(16000));
}

TEST_CASE("a dish is parted rather than sent elsewhere") {
    std::vector<BagToFreeze> bags;
    for (const std::size_t dish : {0U, 0U, 0U, 1U, 1U, 1U, 2U, 2U, 2U})
        bags.push_back({"B" + std::to_string(bags.size()), Mass{2000}, dish, days{1}});
    const auto load = freezer_load(litres_for_10_kg, bags); // three times 6 kg into twice 10 kg
    CHECK(load.elsewhere.empty());
    CHECK(load.batches.size() == 2);
}

TEST_CASE("more than the freezer takes today is said even of food that may not wait") {
    const auto load = freezer_load(litres_for_10_kg, bags_of({6000, 5000}, 0));
    REQUIRE(load.batches.size() == 1);
    CHECK(load.batches[0].bags == Names{"B1"});
    CHECK(load.elsewhere == Names{"B2"});
}

TEST_CASE("random days: no bag waits too long, each has one place, no batch is over the limit") {
    thawslip::test_support::Random random{20261017};
    for (int round = 0; round < 500; ++round) {
        CAPTURE(round);
        std::vector<BagToFreeze> bags;
        const auto count = random.below(60);
        for (std::size_t i = 0; i < count; ++i) {
            const auto dish = random.below(8);
            const auto weight =
                random.chance(12) ? std::optional<Mass>{} : Mass{random.between(100.0, 6000.0)};
            bags.push_back(
                {"B" + std::to_string(i), weight, dish, days{(dish + random.below(2)) % 5}});
        }
        const double litres = random.between(20.0, 600.0);
        const auto load = freezer_load(litres, bags);
        std::map<std::string, int> seen;
        for (std::size_t number = 0; number < load.batches.size(); ++number) {
            const auto& batch = load.batches[number];
            CHECK_FALSE(batch.bags.empty());
            CHECK(batch.weight <= load.limit_high);
            double grams = 0.0;
            for (const auto& label : batch.bags) {
                const auto& bag = *std::ranges::find(bags, label, &BagToFreeze::label);
                CHECK(days{number} <= bag.may_wait);
                grams += bag.weight.value_or(Mass{}).grams;
                ++seen[label];
            }
            CHECK(grams == doctest::Approx(batch.weight.grams));
        }
        for (const auto* names : {&load.elsewhere, &load.too_heavy, &load.without_weight}) {
            for (const auto& label : *names)
                ++seen[label];
        }
        CHECK(seen.size() == bags.size());
        CHECK(std::ranges::all_of(seen, [](const auto& one) { return one.second == 1; }));
        // Nothing is sent away that today's batch has room for.
        for (const auto& label : load.elsewhere) {
            const auto& bag = *std::ranges::find(bags, label, &BagToFreeze::label);
            REQUIRE_FALSE(load.batches.empty());
            CHECK(load.batches[0].weight.grams + bag.weight.value_or(Mass{}).grams >
                  load.limit_high.grams);
        }
        const auto again = freezer_load(litres, bags);
        CHECK(again.elsewhere == load.elsewhere);
        CHECK(again.batches.size() == load.batches.size());
    }
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

TEST_CASE(
    "of bags that may wait as long what is raw finds room first, in whichever order they come") {
    std::vector<BagToFreeze> bags = bags_of({2500, 2500, 2500, 1000}, 0);
    bags[3].raw = true;
    for (int turn = 0; turn < 4; ++turn) {
        const auto load = freezer_load(litres_for_10_kg * 0.5, bags);
        CHECK(std::ranges::find(load.batches.at(0).bags, "B4") != load.batches[0].bags.end());
        CHECK(std::ranges::find(load.elsewhere, "B4") == load.elsewhere.end());
        std::ranges::rotate(bags, bags.begin() + 1);
    }
}

TEST_CASE("raw food that may wait as long as cooked goes in first, but for no further day") {
    std::vector<BagToFreeze> bags = bags_of({7000, 4000}, 3);
    bags[0].dish = 0;
    bags[1].dish = 1;
    bags[1].raw = true;
    const auto load = freezer_load(litres_for_10_kg, bags);
    REQUIRE(load.batches.size() == 2);
    CHECK(load.batches[0].bags == Names{"B2"});
    // 7 + 3 and 6 + 4 kg fill two days; with the raw 4 and 3 kg first it would take three.
    bags = bags_of({7000, 6000, 4000, 3000}, 3);
    for (std::size_t i = 0; i < bags.size(); ++i)
        bags[i].dish = i;
    bags[2].raw = bags[3].raw = true;
    CHECK(freezer_load(litres_for_10_kg, bags).batches.size() == 2);
}

TEST_CASE("a plan that leaves out less that is raw counts before one that leaves out less in all") {
    // By whole dishes 3 kg of raw and 4 kg of cooked food fill the day; by bags it would be fuller.
    std::vector<BagToFreeze> bags;
    for (int i = 0; i < 3; ++i)
        bags.push_back({"R" + std::to_string(i), Mass{1000}, 0, days{0}, true});
    for (int i = 0; i < 4; ++i)
        bags.push_back({"C" + std::to_string(i), Mass{1900}, 1, days{0}, false});
    const auto load = freezer_load(litres_for_10_kg * 0.5, bags);
    for (int i = 0; i < 3; ++i)
        CHECK(std::ranges::find(load.elsewhere, "R" + std::to_string(i)) == load.elsewhere.end());
}

// Random packing days, planned with the published lists: no bag waits longer than they allow.

#include "../../support/random.h"
#include "intake/storage_file.h"
#include "kitchen/plan.h"
#include "kitchen/storage/fridge_life.h"

#include <algorithm>
#include <doctest/doctest.h>
#include <map>

using namespace thawslip;
using namespace thawslip::kitchen;
using namespace std::chrono;

namespace {

using Random = test_support::Random;

constexpr Date packing_day = 2026y / 10 / 17;

Package random_package(Random& random, const std::vector<std::string>& classes, int number) {
    Package package;
    package.dish = "Dish " + std::to_string(number);
    package.servings = 4;
    package.bags = 1 + static_cast<int>(random.below(6));
    package.where = KeyPath{"package"}.index(static_cast<std::size_t>(number));
    for (std::size_t i = 0; i <= random.below(3); ++i)
        package.food.push_back(classes[random.below(classes.size())]);
    if (random.chance(6))
        package.food.clear();
    if (package.food.empty())
        package.use_by = 2026y / 12 / 17;
    if (!random.chance(10))
        package.weight = Mass{random.between(200.0, 4000.0)};
    package.days_refrigerated = random.chance(3) ? static_cast<int>(random.below(4)) : 0;
    if (random.chance(5))
        package.made = add_days(packing_day, -days{static_cast<int>(random.below(3))});
    return package;
}

/// The list's own limit: the high end of the shortest-lived class that has a row.
std::optional<days> limit_of(const Package& package, const StorageTable& table) {
    const auto row = shortest_fridge_life(table, package.food);
    return row ? std::optional{row->low} : std::nullopt;
}

/// Where no list has any: a day for what spoils, the Food Code's week for bread and the like.
days limit_without_list(const Package& package, const StorageTable& table) {
    const bool keeps = std::ranges::all_of(package.food, [&](const std::string& food) {
        return kind_of(table, food) == FoodKind::Other;
    });
    return keeps && !package.food.empty() ? food_code_days : days{1};
}

} // namespace

TEST_CASE("no bag of any plan waits longer than its list allows, and each has one place") {
    Random random{171026};
    for (int round = 0; round < 300; ++round) {
        CAPTURE(round);
        const char* lists[] = {"us", "us-fsis", "canada", "oregon", "uk"};
        const auto table = intake::built_in_storage(lists[random.below(std::size(lists))]);
        const auto classes = storage_classes(table);
        Day day{packing_day, "", random.between(20.0, 400.0), {}};
        const auto dishes = 1 + static_cast<int>(random.below(8));
        for (int number = 1; number <= dishes; ++number)
            day.packages.push_back(random_package(random, classes, number));
        Diagnostics faults;
        const auto planned = plan(day, table, faults);
        REQUIRE(planned.freezer_load.has_value());
        const auto& load = *planned.freezer_load;

        std::map<std::string, int> places;
        for (std::size_t number = 0; number < load.batches.size(); ++number) {
            CHECK(load.batches[number].weight <= load.limit_high);
            for (const auto& bag : load.batches[number].bags)
                ++places[bag];
        }
        for (const auto* names : {&load.elsewhere, &load.too_heavy, &load.without_weight}) {
            for (const auto& bag : *names)
                ++places[bag];
        }
        std::size_t bags = 0;
        for (const auto& one : planned.packages) {
            days longest{0};
            for (const auto& bag : one.bags) {
                ++bags;
                longest = std::max(longest, bag.waits);
                CHECK(places[bag.id] == 1);
            }
            if (longest == days{0})
                continue;
            // What the cook wrote and the wait stand together, and what is said follows from it.
            const auto written = std::ranges::find(day.packages, one.package.dish, &Package::dish);
            const days chilled{one.package.days_refrigerated};
            CHECK(chilled >= longest + days{written->days_refrigerated});
            CHECK(chilled >= longest + days_between(one.made, packing_day));
            CHECK(chilled <=
                  limit_of(one.package, table).value_or(limit_without_list(one.package, table)));
            CHECK(chilled <= food_code_days);
            const auto left = days_left_after_thawing(table, one.package.food, chilled);
            CHECK(one.after_thawing.has_value() == left.has_value());
            if (left)
                CHECK(one.after_thawing->low == left->low);
        }
        CHECK(places.size() == bags);

        Diagnostics again_faults;
        const auto again = plan(day, table, again_faults);
        REQUIRE(again.freezer_load->batches.size() == load.batches.size());
        for (std::size_t number = 0; number < load.batches.size(); ++number)
            CHECK(again.freezer_load->batches[number].bags == load.batches[number].bags);
        CHECK(again.freezer_load->elsewhere == load.elsewhere);
    }
}

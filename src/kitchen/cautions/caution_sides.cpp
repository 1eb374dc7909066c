#include "kitchen/cautions/caution_topics.h"
#include "kitchen/foods/foods_named.h"

// What is cooked beside the bag has no target of its own: where its words name raw meat, fish or
// eggs, the card says how hot those must get.

namespace thawslip::kitchen {
namespace {

using namespace scene;

/// A package of nothing but a side, for whoever looks at packages.
Package alone(const Side& side) {
    Package package;
    package.dish = text_of(side.add);
    package.cook.emplace();
    package.cook->in = side.in;
    package.cook->steps = side.steps;
    return package;
}

std::vector<std::string> raw_kinds(const StorageTable& table, const Package& package) {
    std::vector<std::string> kinds;
    for (const auto& named : foods_named(table, package)) {
        if (named.is_animal && any_raw(table, named.kinds)) {
            kinds.insert(kinds.end(), named.kinds.begin(), named.kinds.end());
        }
    }
    return kinds;
}

Findings side_minimum(const Scene& scene) {
    Findings found;
    for (const auto& side : scene.package.sides) {
        auto package = alone(side);
        package.food = raw_kinds(scene.table, package);
        if (const auto minimum = safe_minimum(scene.table, package)) {
            found.push_back(
                {{text_of(side.add), minimum_text(scene, *minimum)}, side.where.key("add")});
        }
    }
    return found;
}

constexpr CautionRule sides_rows[] = {
    {"side-minimum", CautionLevel::Card, "FoodSafety.gov, Safe Minimum Internal Temperatures",
     side_minimum},
};

} // namespace

std::span<const CautionRule> side_rules() {
    return sides_rows;
}

} // namespace thawslip::kitchen

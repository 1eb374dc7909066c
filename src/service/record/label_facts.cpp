#include "service/record/label_facts.h"

#include "archive/relabelled.h"
#include "base/list.h"
#include "kitchen/allergens/added_allergens.h"
#include "service/allergen_names.h"
#include "service/freezer/packages_of_bags.h"
#include "service/record/day_record.h"

#include <algorithm>

namespace thawslip::service {
namespace {

/// By their words alone: a list of allergens, which is a setting, does not make old labels wrong.
std::vector<std::string> added_names(const kitchen::Package& package) {
    return sorted_once(allergen_names(kitchen::added_allergens(package)));
}

bool differ(const std::optional<std::vector<std::string>>& before,
            const std::optional<std::vector<std::string>>& now) {
    return before && now && *before != *now;
}

} // namespace

LabelFacts label_facts(const kitchen::PlannedPackage& planned) {
    return {record_of(planned), added_names(planned.package)};
}

LabelFacts label_facts(archive::Archive& archive, const archive::Bag& bag) {
    LabelFacts facts;
    for (auto& record : archive.packages(bag.day)) {
        if (record.dish == bag.dish && record.batch.size == bag.size) {
            facts.record = std::move(record);
        }
    }
    PackagesOfBags packages{archive};
    if (const auto* planned = packages.of(bag)) {
        facts.added = added_names(planned->package);
    }
    return facts;
}

bool is_relabelled(const LabelFacts& before, const LabelFacts& now) {
    return archive::is_relabelled(before.record, now.record) || differ(before.added, now.added);
}

std::vector<std::string> bags_of_other_additions(archive::Archive& archive, const Days& days) {
    std::vector<std::string> ids;
    PackagesOfBags packages{archive};
    for (const auto& planned : packages_of(days)) {
        for (const auto& id : mapped(planned.bags, &kitchen::Bag::id)) {
            const auto bag = archive.bag(id);
            const auto* before = bag ? packages.of(*bag) : nullptr;
            if (before != nullptr && added_names(before->package) != added_names(planned.package)) {
                ids.push_back(id);
            }
        }
    }
    return ids;
}

} // namespace thawslip::service

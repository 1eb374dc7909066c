#include "service/record/day_record.h"

#include "base/list.h"
#include "kitchen/figures.h"
#include "service/allergen_names.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <iterator>

namespace thawslip::service {
namespace {

archive::FoodRecord food_of(const kitchen::PlannedPackage& planned) {
    auto allergens = allergen_names(planned.allergens);
    std::ranges::move(allergen_names(planned.may_contain, "may contain "),
                      std::back_inserter(allergens));
    return {sorted_once(std::move(allergens)), sorted_once(planned.package.food)};
}

/// Of what is eaten frozen there is nothing to know: a record is not of cooking it from frozen.
std::optional<archive::ThawRecord> thaw_of(const kitchen::PlannedPackage& planned) {
    if (planned.served == kitchen::Served::Frozen) {
        return std::nullopt;
    }
    return archive::ThawRecord{planned.package.thaw.method, allowed_thaw(planned)};
}

} // namespace

archive::PackageRecord record_of(const kitchen::PlannedPackage& planned) {
    const auto& package = planned.package;
    archive::PackageRecord record{package.dish,
                                  unicode::fold_for_search(package.dish),
                                  planned.made,
                                  planned.keep_until.date,
                                  planned.keep_until.basis,
                                  package.servings,
                                  package.weight,
                                  food_of(planned),
                                  thaw_of(planned),
                                  {},
                                  planned.batch};
    record.place = package.place;
    record.bags = mapped(planned.bags, &kitchen::Bag::id);
    return record;
}

archive::DayRecord record_of(const Days& days, std::size_t day) {
    const auto& plan = days.plans[day];
    const auto& text = days.texts[day];
    const auto record_of_package = [](const auto& planned) { return record_of(planned); };
    return {plan.made, plan.kitchen, text.place, text.text,
            mapped(plan.packages, record_of_package)};
}

} // namespace thawslip::service

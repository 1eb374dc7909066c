#include "kitchen/cooking/other_thaw.h"

#include "kitchen/cooking/cook_time.h"

#include <algorithm>

namespace thawslip::kitchen {
namespace {

TimeFrom state_of(ThawMethod method) {
    return method == ThawMethod::FromFrozen ? TimeFrom::Frozen : TimeFrom::Thawed;
}

/// What the time of a cooked dish counts from by the first method.
TimeFrom written_from(const Package& package) {
    return package.cook->time_from.value_or(state_of(package.thaw.method));
}

bool says_the_same(const Caution& one, const Caution& other) {
    return one.id == other.id && one.values == other.values;
}

} // namespace

Package thawed_by(const Package& package, const OtherMethod& other, const StorageTable& table) {
    auto variant = package;
    variant.thaw.method = other.method;
    variant.thaw.method_where = other.where;
    variant.thaw.others.clear();
    variant.thaw.note.clear(); // it is of the first
    if (!package.cook || !package.cook->time || written_from(package) == state_of(other.method)) {
        return variant;
    }
    const bool may_be_turned =
        other.method == ThawMethod::FromFrozen && may_count_from_frozen(variant, table);
    variant.cook->time_from = may_be_turned ? std::optional{TimeFrom::Thawed} : std::nullopt;
    if (!may_be_turned) {
        variant.cook->time.reset();
    }
    return variant;
}

void add_cautions_of(ThawMethod method, const std::vector<Caution>& others,
                     std::vector<Caution>& cautions) {
    for (const auto& other : others) {
        const auto known = std::ranges::find_if(
            cautions, [&](const Caution& caution) { return says_the_same(caution, other); });
        if (known == cautions.end()) {
            cautions.push_back(other);
            cautions.back().thawed_by = {method};
        } else if (!known->thawed_by.empty() && known->thawed_by.back() != method) {
            known->thawed_by.push_back(method);
        }
    }
    std::ranges::stable_sort(cautions, std::ranges::greater{}, &Caution::level);
}

} // namespace thawslip::kitchen

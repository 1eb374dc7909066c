#include "service/day/freezer_load.h"

#include "base/list.h"
#include "kitchen/measures/unit_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <map>
#include <utility>

namespace thawslip::service {
namespace {

/// What goes into one freezer on one date.
struct DateLoad {
    double grams = 0.0;
    double limit = 0.0;
    int days = 0; ///< packing days that it comes from
};

using Freezer = std::pair<std::string, kitchen::Date>; ///< a kitchen's, on a date

std::map<Freezer, DateLoad> loads_by_date(std::span<const kitchen::Plan> plans) {
    std::map<Freezer, DateLoad> loads;
    for (const auto& plan : plans) {
        const auto batches = plan.freezer_load ? plan.freezer_load->batches.size() : 0;
        for (std::size_t i = 0; i < batches; ++i) {
            auto& load = loads[{plan.kitchen, kitchen::add_days(plan.made, std::chrono::days{i})}];
            const auto limit = plan.freezer_load->limit_high.grams;
            load.grams += plan.freezer_load->batches[i].weight.grams;
            load.limit = load.days == 0 ? limit : std::min(load.limit, limit);
            ++load.days;
        }
    }
    return loads;
}

} // namespace

std::string bags_text(const kitchen::Plan& plan, const std::vector<std::string>& bags) {
    return joined(by_dish(plan, bags), "; ", [](const auto& dish) {
        const auto& package = dish.planned->package;
        return fmt::format("{}{} ({})", package.dish,
                           package.size ? fmt::format(" for {}", package.servings) : "",
                           fmt::join(dish.bags, ", "));
    });
}

std::vector<std::string> shared_freezer_troubles(std::span<const kitchen::Plan> plans,
                                                 const kitchen::UnitStyle& style) {
    std::vector<std::string> troubles;
    for (const auto& [freezer, load] : loads_by_date(plans)) {
        if (load.days > 1 && load.grams > load.limit) {
            troubles.push_back(fmt::format(
                "{} of {} descriptions go in on {}, and the limit in 24 h is {} of all together: "
                "write what is packed on one day into one file, and pack later what is of another "
                "day; or say with different names of kitchens that they are two freezers",
                to_text(kitchen::Mass{load.grams}, style), load.days,
                kitchen::to_iso(freezer.second), to_text(kitchen::Mass{load.limit}, style)));
        }
    }
    return troubles;
}

std::vector<std::string> load_troubles(const kitchen::Plan& plan, const kitchen::UnitStyle& style) {
    if (!plan.freezer_load) {
        return {};
    }
    const auto& load = *plan.freezer_load;
    std::vector<std::string> troubles;
    if (!load.elsewhere.empty()) {
        troubles.push_back(fmt::format(
            "{} must go elsewhere today, for it would wait too long in the refrigerator: {}. Take "
            "it to a second freezer today; or cook what is raw now and freeze it as a cooked dish "
            "with a label of its own; or eat it within its days in the refrigerator; or pack "
            "less. Ice keeps it cold, but its days go on",
            to_text(load.elsewhere_weight, style), bags_text(plan, load.elsewhere)));
    }
    if (!load.too_heavy.empty()) {
        troubles.push_back(
            fmt::format("too heavy for the freezer, each by itself; make it smaller: {}",
                        bags_text(plan, load.too_heavy)));
    }
    if (!load.without_weight.empty()) {
        troubles.push_back(fmt::format("without a weight, so not counted; weigh it: {}",
                                       bags_text(plan, load.without_weight)));
    }
    return troubles;
}

} // namespace thawslip::service

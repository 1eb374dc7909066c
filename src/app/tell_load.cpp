#include "app/tell_load.h"

#include "app/counted.h"
#include "kitchen/measures/unit_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <fmt/ranges.h>
#include <map>
#include <ostream>
#include <utility>

namespace thawslip::app {
namespace {

std::string_view verdict_words(kitchen::LoadVerdict verdict) {
    switch (verdict) {
    case kitchen::LoadVerdict::Within: return "within the limit: all at once";
    case kitchen::LoadVerdict::Near:
        return "between the two limits: all at once if the freezer is a cold one, spread out";
    case kitchen::LoadVerdict::Over: break;
    }
    return "over the limit";
}

/// "Squash and red lentil stew (A, B); Plum and ginger compote (C)": bags by their dishes.
std::string bags_text(const kitchen::Plan& plan, const std::vector<std::string>& bags) {
    std::string text;
    for (const auto& dish : by_dish(plan, bags)) {
        text += fmt::format("{}{} ({})", text.empty() ? "" : "; ", dish.planned->package.dish,
                            fmt::join(dish.bags, ", "));
    }
    return text;
}

void tell_batches(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out) {
    const auto& batches = plan.freezer_load->batches;
    if (batches.size() > 1) {
        out << fmt::format("    freeze in {} batches, a day apart; what goes in later waits in "
                           "the refrigerator, and those days are counted\n",
                           batches.size());
    }
    for (std::size_t i = 0; i < batches.size(); ++i) {
        const auto day = kitchen::add_days(plan.made, std::chrono::days{i});
        out << fmt::format("    batch {}, {}, {}: {}\n", i + 1, kitchen::to_iso(day),
                           to_text(batches[i].weight, style), bags_text(plan, batches[i].bags));
    }
}

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

void tell_load(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out) {
    const auto& load = *plan.freezer_load;
    const bool all_weighed = load.without_weight.empty();
    out << fmt::format("the freezer: {}{} in one day; the limit in 24 h is {} to {}: {}{}\n",
                       all_weighed ? "" : "at least ", to_text(load.total, style),
                       to_text(load.limit_low, style), to_text(load.limit_high, style),
                       verdict_words(load.verdict),
                       all_weighed ? "" : ", as far as weights are known");
    if (load.verdict == kitchen::LoadVerdict::Over) {
        tell_batches(plan, style, out);
    }
    for (const auto& trouble : load_troubles(plan, style)) {
        out << "    " << trouble << "\n";
    }
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

} // namespace thawslip::app

#include "app/tell_load.h"

#include "kitchen/unit_text.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

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
std::string by_dish(const kitchen::Plan& plan, const std::vector<std::string>& bags) {
    std::string text;
    for (const auto& planned : plan.packages) {
        std::string ids;
        for (const auto& bag : planned.bags) {
            if (std::ranges::find(bags, bag.id) != bags.end()) {
                ids += (ids.empty() ? "" : ", ") + bag.id;
            }
        }
        if (!ids.empty()) {
            text += fmt::format("{}{} ({})", text.empty() ? "" : "; ", planned.package.dish, ids);
        }
    }
    return text;
}

void tell_batches(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out) {
    const auto& batches = plan.freezer_load->batches;
    out << fmt::format(
        "    freeze in {} batches, a day apart; the rest waits in the refrigerator\n",
        batches.size());
    for (std::size_t i = 0; i < batches.size(); ++i) {
        out << fmt::format("    batch {}, {}: {}\n", i + 1, to_text(batches[i].weight, style),
                           by_dish(plan, batches[i].bags));
    }
}

} // namespace

void tell_load(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out) {
    const auto& load = *plan.freezer_load;
    out << fmt::format("the freezer: {} in one day; the limit in 24 h is {} to {}: {}\n",
                       to_text(load.total, style), to_text(load.limit_low, style),
                       to_text(load.limit_high, style), verdict_words(load.verdict));
    if (load.verdict == kitchen::LoadVerdict::Over && load.batches.size() > 1) {
        tell_batches(plan, style, out);
    }
    if (!load.too_heavy.empty()) {
        out << fmt::format("    too heavy for the freezer, each by itself; make it smaller: {}\n",
                           by_dish(plan, load.too_heavy));
    }
    if (!load.without_weight.empty()) {
        out << fmt::format("    without a weight, so not counted: {}\n",
                           by_dish(plan, load.without_weight));
    }
}

} // namespace thawslip::app

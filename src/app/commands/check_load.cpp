#include "app/commands/check_text.h"
#include "kitchen/measures/unit_text.h"
#include "service/day/freezer_load.h"

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

void show_batches(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out) {
    const auto& batches = plan.freezer_load->batches;
    if (batches.size() > 1) {
        out << fmt::format("    freeze in {} batches, a day apart; what goes in later waits in "
                           "the refrigerator, and those days are counted\n",
                           batches.size());
    }
    for (std::size_t i = 0; i < batches.size(); ++i) {
        const auto day = kitchen::add_days(plan.made, std::chrono::days{i});
        out << fmt::format("    batch {}, {}, {}: {}\n", i + 1, kitchen::to_iso(day),
                           to_text(batches[i].weight, style),
                           service::bags_text(plan, batches[i].bags));
    }
}

} // namespace

void show_load(const kitchen::Plan& plan, const kitchen::UnitStyle& style, std::ostream& out) {
    const auto& load = *plan.freezer_load;
    const bool all_weighed = load.without_weight.empty();
    out << fmt::format("the freezer: {}{} in one day; the limit in 24 h is {} to {}: {}{}\n",
                       all_weighed ? "" : "at least ", to_text(load.total, style),
                       to_text(load.limit_low, style), to_text(load.limit_high, style),
                       verdict_words(load.verdict),
                       all_weighed ? "" : ", as far as weights are known");
    if (load.verdict == kitchen::LoadVerdict::Over) {
        show_batches(plan, style, out);
    }
    for (const auto& trouble : service::load_troubles(plan, style)) {
        out << "    " << trouble << "\n";
    }
}

} // namespace thawslip::app

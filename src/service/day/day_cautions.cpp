#include "service/day/day_cautions.h"

#include "service/day/freezer_load.h"
#include "service/day/in_freezer.h"
#include "wording/fields.h"

#include <algorithm>

namespace thawslip::service {
namespace {

/// The cautions of one day's dishes, placed; what holds for all of them is said once.
void add_cautions(Diagnostics& said, const kitchen::Plan& plan, const toml::Document& document,
                  const wording::Language& language) {
    for (const auto& planned : plan.packages) {
        for (const auto& caution : planned.cautions) {
            if (caution.level != kitchen::CautionLevel::Report) {
                continue;
            }
            Diagnostic one{Severity::Caution,
                           document.place(caution.where),
                           caution.where,
                           wording::say_caution(caution, language),
                           {}};
            if (std::ranges::find(said, one) == said.end()) {
                said.push_back(std::move(one));
            }
        }
    }
}

} // namespace

Messages cautions_of(const Days& days, const Settings& settings) {
    const auto style = message_style(settings);
    Diagnostics said;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        add_cautions(said, days.plans[day], days.documents[day], style.language);
    }
    Messages messages;
    messages.add(std::move(said), days.documents);
    for (const auto& trouble : shared_freezer_troubles(days.plans, style.units)) {
        messages.caution("the freezer: " + trouble);
    }
    for (const auto& plan : days.plans) {
        for (const auto& trouble : load_troubles(plan, style.units)) {
            messages.caution("the freezer: " + trouble);
        }
        for (const auto& trouble : room_troubles(plan, style)) {
            messages.caution("the freezer: " + trouble);
        }
    }
    return messages;
}

} // namespace thawslip::service

#include "app/report_cautions.h"

#include "app/report.h"
#include "app/tell_load.h"
#include "wording/fields.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
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

void report_cautions(const Days& days, const Settings& settings, std::ostream& err) {
    const auto style = style_of(settings);
    Diagnostics said;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        add_cautions(said, days.plans[day], days.documents[day], style.language);
    }
    print(err, said, days.documents);
    for (const auto& trouble : shared_freezer_troubles(days.plans, style.units)) {
        err << fmt::format("caution: the freezer: {}\n", trouble);
    }
    for (const auto& plan : days.plans) {
        for (const auto& trouble : load_troubles(plan, style.units)) {
            err << fmt::format("caution: the freezer: {}\n", trouble);
        }
    }
}

} // namespace thawslip::app

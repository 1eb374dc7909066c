#include "app/report_cautions.h"

#include "app/report.h"
#include "app/tell_load.h"
#include "wording/fields.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>
#include <set>

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

/// Each day's batches count on the whole freezer.
void report_shared_freezer(const Days& days, std::ostream& err) {
    std::set<kitchen::Date> seen;
    for (const auto& plan : days.plans) {
        if (plan.freezer_load && !seen.insert(plan.made).second) {
            err << fmt::format("caution: two of these days are of {} and name a freezer: if it is "
                               "one freezer, write them into one file, for each counts on all of "
                               "it\n",
                               kitchen::to_iso(plan.made));
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
    report_shared_freezer(days, err);
    for (const auto& plan : days.plans) {
        for (const auto& trouble : load_troubles(plan, style.units)) {
            err << fmt::format("caution: the freezer: {}\n", trouble);
        }
    }
}

} // namespace thawslip::app

#include "app/commands.h"
#include "app/days.h"
#include "app/report.h"
#include "wording/fields.h"
#include "wording/phrases.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

void tell(const kitchen::PlannedPackage& planned, std::ostream& out) {
    const auto& language = wording::shipped_language("en");
    out << fmt::format(
        "{}: {}, made {}, {} {}\n", planned.package.dish,
        planned.bags.size() == 1 ? "1 bag" : fmt::format("{} bags", planned.bags.size()),
        say_date(planned.made, language), say_keep_until_head(planned.keep_until, language),
        say_date(planned.keep_until.date, language));
    out << "   ";
    for (const auto& bag : planned.bags) {
        out << " " << bag.id;
    }
    out << "\n";
    for (const auto& caution : planned.cautions) {
        out << "    caution: " << say_caution(caution, language) << "\n";
    }
}

} // namespace

ExitStatus check(const PrintOptions& options, Console console) {
    const auto days = read_days(options.days);
    print(console.err, days.diagnostics, days.documents);
    if (has_errors(days.diagnostics)) {
        return ExitStatus::Refused;
    }
    for (const auto& plan : days.plans) {
        for (const auto& planned : plan.packages) {
            tell(planned, console.out);
        }
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

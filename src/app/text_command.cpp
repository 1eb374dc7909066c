#include "app/commands.h"
#include "app/day_files.h"
#include "app/lay_out.h"
#include "app/make_prints.h"
#include "app/report.h"
#include "app/settle.h"

#include <ostream>

namespace thawslip::app {

ExitStatus text(const PrintOptions& options, const Settings& settings, Console console) {
    const auto planned = read_days(options.days, settings, Ids::Planned);
    const auto days =
        has_errors(planned.diagnostics) ? planned : settle_to_look(planned, settings, console);
    print(console.err, days.diagnostics, days.documents);
    if (has_errors(days.diagnostics)) {
        return ExitStatus::Refused;
    }
    const auto laid_out = lay_out(label_job(days, settings), days, options, settings, console);
    if (!laid_out) {
        return laid_out.fault();
    }
    const char* between = "";
    for (const auto& print : laid_out.value().fitting.prints) {
        if (print.symbol) {
            console.out << between << print.symbol->text << "\n";
            between = "\n";
        }
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

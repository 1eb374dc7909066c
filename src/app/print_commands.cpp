#include "app/commands.h"
#include "app/days.h"
#include "app/job.h"
#include "app/make_prints.h"
#include "app/report.h"
#include "app/report_cautions.h"

#include <ostream>

namespace thawslip::app {
namespace {

/// Prints what `make` makes of the days, unless something stands against them.
template <class Make>
ExitStatus print_days(const PrintOptions& options, const Settings& settings, Console console,
                      const Make& make) {
    const auto days = read_days(options.days, settings);
    print(console.err, days.diagnostics, days.documents);
    if (has_errors(days.diagnostics)) {
        return ExitStatus::Refused;
    }
    report_cautions(days, settings, console.err);
    const Job job = make(days);
    if (job.prints.empty()) {
        console.out << "nothing to print: no dish has a finishing ingredient\n";
        return ExitStatus::Done;
    }
    return run_job(job, days, options, settings, console);
}

} // namespace

ExitStatus labels(const PrintOptions& options, const Settings& settings, Console console) {
    return print_days(options, settings, console,
                      [&settings](const Days& days) { return label_job(days, settings); });
}

ExitStatus cards(const PrintOptions& options, CardKinds kinds, const Settings& settings,
                 Console console) {
    return print_days(options, settings, console, [kinds, &settings](const Days& days) {
        return card_job(days, kinds, settings);
    });
}

} // namespace thawslip::app

#include "app/commands.h"
#include "app/day_files.h"
#include "app/job.h"
#include "app/make_prints.h"
#include "app/recording.h"
#include "app/report.h"
#include "app/report_cautions.h"
#include "app/settle.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// Prints what `make` makes of the days with the ids that their bags have by now.
template <class Make>
ExitStatus print_settled(const Days& planned, const PrintOptions& options, const Settings& settings,
                         Console console, const Make& make) {
    const auto days = settle(planned, options, settings, console);
    if (!days) {
        return ExitStatus::Refused;
    }
    print(console.err, days->diagnostics, days->documents);
    if (has_errors(days->diagnostics)) {
        return ExitStatus::Refused;
    }
    report_cautions(*days, settings, console.err);
    const Job job = make(*days);
    if (job.prints.empty()) {
        console.out << "nothing to print: no dish has a finishing ingredient\n";
        return ExitStatus::Done;
    }
    return run_job(job, *days, options, settings, console);
}

/// Prints what `make` makes of the days, unless something stands against them.
template <class Make>
ExitStatus print_days(const PrintOptions& options, const Settings& settings, Console console,
                      const Make& make) {
    if (const auto refused = refuse_output(output_of(options), settings, console)) {
        return *refused; // before the archive is looked into
    }
    const auto planned = read_days(options.days, settings, Ids::Planned);
    if (has_errors(planned.diagnostics)) {
        print(console.err, planned.diagnostics, planned.documents);
        return ExitStatus::Refused;
    }
    constexpr int most_attempts = 5;
    for (int attempt = 1;; ++attempt) {
        try {
            return print_settled(planned, options, settings, console, make);
        } catch (const Raced& raced) {
            if (raced.is_out() && (options.printer || options.output == "-")) {
                throw SystemFailure{fmt::format("do not use these labels: {}", raced.what())};
            }
            if (attempt == most_attempts) {
                throw SystemFailure{fmt::format("nothing was printed: {}", raced.what())};
            }
        }
    }
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

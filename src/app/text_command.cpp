#include "app/commands.h"
#include "app/days.h"
#include "app/make_prints.h"
#include "app/report.h"

#include <ostream>

namespace thawslip::app {

ExitStatus text(const std::vector<std::string>& files, Console console) {
    const auto days = read_days(files);
    print(console.err, days.diagnostics, days.documents);
    if (has_errors(days.diagnostics)) {
        return ExitStatus::Refused;
    }
    const char* between = "";
    for (const auto& print : label_job(days).prints) {
        console.out << between << print.code_texts.front() << "\n";
        between = "\n";
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

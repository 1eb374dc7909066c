#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/commands/print_job.h"
#include "app/files/data_folder.h"
#include "app/files/kept_files.h"
#include "app/used_sheets.h"
#include "base/counted.h"

#include <ostream>

namespace thawslip::app {

ExitStatus reprint(const ReprintOptions& options, const Settings& settings, Console console) {
    const Output output{options.output, print_endings, {options.look.stock}};
    const auto what = what_of(options.question.kind);
    const auto printer = usable_destination(output, printer_by_job(options.printer, what, settings),
                                            settings, console);
    if (!printer) {
        return printer.fault();
    }
    auto archive = needed_archive(settings, archive::Mode::Read, console);
    if (!archive) {
        return ExitStatus::Refused;
    }
    const auto prints = find_prints(*archive, options.question);
    console.err << to_text(prints.messages);
    if (!prints) {
        return ExitStatus::Refused;
    }
    if (prints.value->empty()) {
        console.out << "nothing to print: each of these bags has been printed\n";
        return ExitStatus::Done;
    }
    auto around = surroundings();
    around.used_sheet = used_sheets(settings);
    const auto all = service::reprint(*archive, *prints.value, options.look, around, changed_files);
    console.err << to_text(all.messages);
    if (!all) {
        return ExitStatus::Refused;
    }
    const auto& [laid_out, job, count] = *all.value;
    if (const auto refused =
            refuse_sheets(output, laid_out.fitting.sheets, options.overwrite, settings, console)) {
        return *refused;
    }
    const auto status = deliver_job(laid_out, job, options.output, printer.value(), console);
    if (status == ExitStatus::Done) {
        note_sheet(laid_out, settings, console);
    }
    if (status == ExitStatus::Done && options.output != "-") {
        console.out << closing_line(laid_out, counted(count, job.noun),
                                    options.called.empty() ? options.output : options.called);
    }
    return status;
}

} // namespace thawslip::app

#include "app/job.h"

#include "app/counted.h"
#include "app/deliver.h"
#include "app/gone_bags.h"
#include "app/lay_out.h"
#include "app/make_prints.h"
#include "app/recording.h"
#include "app/whole_file.h"
#include "render/dump.h"
#include "render/pdf.h"
#include "render/svg.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

layout::Frame sheet_of(const LaidOut& laid_out, int sheet) {
    const auto& setup = laid_out.setup;
    return draw_sheet(laid_out.fitting, sheet, setup.chosen, setup.target, setup.fonts);
}

void write_pdf(const std::string& output, const LaidOut& laid_out, const Job& job) {
    WholeFile file{output};
    render::PdfWriter writer{laid_out.setup.fonts,
                             {job.title, job.language, std::nullopt},
                             [&file](std::string_view bytes) { file.write(bytes); }};
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        writer.add(sheet_of(laid_out, sheet));
    }
    writer.finish();
    file.commit();
}

void write_svgs(const std::string& output, const LaidOut& laid_out, const Job& job) {
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        write_whole_file(sheet_file(output, sheet),
                         render::svg(sheet_of(laid_out, sheet), laid_out.setup.fonts, job.title));
    }
}

/// The printer refused, and there is no file: said already, and nothing to be recorded.
struct NotPrinted : std::exception {};

/// All sheets in words, one after the other: what a golden test holds a print to.
void write_words(const std::string& output, const LaidOut& laid_out) {
    std::string words;
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        words += render::dump(sheet_of(laid_out, sheet), laid_out.setup.fonts);
    }
    write_whole_file(output, words);
}

/// Nothing leaves a print in silence.
void tell_left_out(const LaidOut& laid_out, const Job& job, const Days& days, Console console) {
    std::set<std::string> told;
    for (const auto& fitted : laid_out.fitting.prints) {
        std::string areas;
        const auto& layout = laid_out.setup.chosen.at(fitted.kind);
        for (const auto& area : report(fitted, layout)) {
            if (area.left_out) {
                areas += (areas.empty() ? "" : ", ") + area.area;
            }
        }
        const auto& dish = name_of(job.prints[fitted.print], job, days);
        if (!areas.empty() && told.insert(dish + areas).second) {
            console.err << fmt::format("caution: left out for want of room: {} of \"{}\"\n", areas,
                                       dish);
        }
    }
}

/// What was printed and what to mind. Standard output is the document's where that was asked for.
void tell_done(const LaidOut& laid_out, const Job& job, const PrintOptions& options,
               Console console) {
    if (options.output == "-") {
        return;
    }
    const auto what =
        fmt::format("{} on {} of {}", counted(job.prints.size(), job.noun),
                    counted(laid_out.fitting.sheets, "sheet"), laid_out.setup.target.stock.name);
    const auto trial = options.record == Record::Trial ? " (a trial: nothing was recorded)" : "";
    console.out << (options.output.empty()
                        ? what + trial + "\n"
                        : fmt::format("{}: {}{}; print at 100 %, not \"fit to page\"\n",
                                      options.output, what, trial));
}

} // namespace

void write_job(const std::string& output, const LaidOut& laid_out, const Job& job) {
    if (output.ends_with(".svg")) {
        write_svgs(output, laid_out, job);
    } else if (output.ends_with(".txt")) {
        write_words(output, laid_out);
    } else {
        write_pdf(output, laid_out, job);
    }
}

Result<std::optional<spool::Printer>, ExitStatus>
usable_destination(const Output& output, const std::optional<std::string>& printer,
                   const Settings& settings, Console console) {
    if (const auto refused = refuse_output(output, settings, console)) {
        return Failure{*refused};
    }
    return wanted_printer(printer, console);
}

ExitStatus deliver_job(const LaidOut& laid_out, const Job& job, const std::string& output,
                       const std::optional<spool::Printer>& printer, Console console) {
    const auto& stock = laid_out.setup.target.stock;
    const auto feed = stock.roll ? spool::Feed::Roll : spool::Feed::Sheets;
    const auto write = [&](const std::string& file) { write_job(file, laid_out, job); };
    return deliver(write, output, printer, {job.title, stock.sheet, feed}, console);
}

ExitStatus run_job(const Job& job, const Days& days, const PrintOptions& options,
                   const Settings& settings, Console console) {
    const auto output = output_of(options);
    const auto printer = usable_destination(output, options.printer, settings, console);
    if (!printer) {
        return printer.fault();
    }
    const auto result = lay_out(job, days, options, settings, console);
    if (!result) {
        return result.fault();
    }
    const auto& laid_out = result.value();
    if (const auto refused =
            refuse_sheets(output, laid_out.fitting.sheets, options.overwrite, settings, console)) {
        return *refused;
    }
    tell_left_out(laid_out, job, days, console);
    if (job.recorded_as == "labels" && options.record == Record::AsSettingsSay) {
        report_gone(job, days, settings, console);
    }
    auto status = ExitStatus::Done;
    const auto publish = [&] {
        status = deliver_job(laid_out, job, options.output, printer.value(), console);
        if (status != ExitStatus::Done && options.output.empty()) {
            throw NotPrinted{};
        }
    };
    const bool recorded = !job.recorded_as.empty() && settings.record_prints &&
                          options.record == Record::AsSettingsSay;
    try {
        recorded ? record_print(job, days, laid_out, options, settings, console, publish)
                 : publish();
    } catch (const NotPrinted&) {
        return status;
    }
    if (status == ExitStatus::Done) {
        tell_done(laid_out, job, options, console);
    }
    return status;
}

} // namespace thawslip::app

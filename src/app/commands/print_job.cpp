#include "app/commands/print_job.h"

#include "app/commands/deliver.h"
#include "app/commands/recording.h"
#include "app/files/whole_file.h"
#include "app/gone_bags.h"
#include "app/progress_line.h"
#include "app/used_sheets.h"
#include "base/counted.h"
#include "render/dump.h"
#include "render/pdf.h"
#include "render/svg.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

void write_pdf(const std::string& output, const service::LaidOut& laid_out,
               const service::Job& job) {
    WholeFile file{output};
    render::PdfWriter writer{laid_out.setup.fonts,
                             {job.title, job.language, std::nullopt},
                             [&file](std::string_view bytes) { file.write(bytes); }};
    const auto sheets = laid_out.fitting.sheets;
    const auto progress = progress_line("drawing sheets");
    for (int sheet = 0; sheet < sheets; ++sheet) {
        writer.add(draw_sheet(laid_out, sheet));
        if (progress) {
            progress(static_cast<std::size_t>(sheet) + 1, static_cast<std::size_t>(sheets));
        }
    }
    writer.finish();
    file.commit();
}

void write_svgs(const std::string& output, const service::LaidOut& laid_out,
                const service::Job& job) {
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        write_whole_file(sheet_file(output, sheet),
                         render::svg(draw_sheet(laid_out, sheet), laid_out.setup.fonts, job.title));
    }
}

/// The printer refused, and there is no file: said already, and nothing to be recorded.
struct NotPrinted : std::exception {};

/// All sheets in words, one after the other: what a golden test holds a print to.
void write_words(const std::string& output, const service::LaidOut& laid_out) {
    std::string words;
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        words += render::dump(draw_sheet(laid_out, sheet), laid_out.setup.fonts);
    }
    write_whole_file(output, words);
}

/// Draws a job that is laid out and writes it whole, as the ending of `output` says.
void write_job(const std::string& output, const service::LaidOut& laid_out,
               const service::Job& job) {
    if (output.ends_with(".svg")) {
        write_svgs(output, laid_out, job);
    } else if (output.ends_with(".txt")) {
        write_words(output, laid_out);
    } else {
        write_pdf(output, laid_out, job);
    }
}

} // namespace

std::optional<std::string> printer_by_job(const std::optional<std::string>& named,
                                          service::What what, const Settings& settings) {
    return named && named->empty() ? settings_of(what, settings).printer : named;
}

Result<std::optional<spool::Printer>, ExitStatus>
usable_destination(const Output& output, const std::optional<std::string>& printer,
                   const Settings& settings, Console console) {
    if (const auto refused = refuse_output(output, settings, console)) {
        return Failure{*refused};
    }
    return wanted_printer(printer, console);
}

ExitStatus deliver_job(const service::LaidOut& laid_out, const service::Job& job,
                       const std::string& output, const std::optional<spool::Printer>& printer,
                       Console console) {
    const auto& stock = laid_out.setup.medium.stock;
    const auto feed = stock.roll ? spool::Feed::Roll : spool::Feed::Sheets;
    const auto write = [&](const std::string& file) { write_job(file, laid_out, job); };
    return deliver(write, output, printer, {job.title, stock.sheet, feed}, console);
}

std::string closing_line(const service::LaidOut& laid_out, const std::string& prints,
                         const std::string& output, std::string_view remark) {
    const auto what =
        fmt::format("{} on {} of {}{}", prints, counted(laid_out.fitting.sheets, "sheet"),
                    laid_out.setup.medium.stock.name, remark);
    return output.empty()
               ? what + "\n"
               : fmt::format("{}: {}; print at 100 %, not \"fit to page\"\n", output, what);
}

ExitStatus put_out(const service::Printing& printing, const PrintOptions& options,
                   const Settings& settings, Console console) {
    const auto& days = printing.days;
    const auto& job = printing.job;
    const auto& laid_out = printing.laid_out;
    const auto printer =
        wanted_printer(printer_by_job(options.printer, job.what, settings), console);
    if (!printer) {
        return printer.fault();
    }
    if (const auto refused = refuse_sheets(output_of(options), laid_out.fitting.sheets,
                                           options.overwrite, settings, console)) {
        return *refused;
    }
    const bool is_recorded = !kept_as(job.what).empty() && !options.look.is_trial &&
                             options.record == Record::AsSettingsSay;
    if (job.what == What::Labels && is_recorded) {
        report_gone(job, days, settings, console);
    }
    auto status = ExitStatus::Done;
    const auto publish = [&] {
        status = deliver_job(printing.laid_out, printing.job, options.output, printer.value(),
                             console); // clang 14 captures no structured binding
        if (status != ExitStatus::Done && options.output.empty()) {
            throw NotPrinted{};
        }
    };
    try {
        if (is_recorded && settings.record_prints) {
            record_print(printing, options, settings, console, publish);
        } else {
            publish();
            if (!options.look.is_trial && options.record == Record::AsSettingsSay) {
                note_sheet(laid_out, settings, console);
            }
        }
    } catch (const NotPrinted&) {
        return status;
    }
    // Standard output is the document's where that was asked for.
    if (status == ExitStatus::Done && options.output != "-") {
        console.out << closing_line(laid_out, counted(count_chosen(job, days), job.noun),
                                    options.called.empty() ? options.output : options.called,
                                    options.look.is_trial ? " (a trial: nothing was recorded)"
                                                          : "");
    }
    return status;
}

} // namespace thawslip::app

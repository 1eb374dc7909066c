#include "app/job.h"

#include "app/lay_out.h"
#include "app/make_prints.h"
#include "app/recording.h"
#include "app/whole_file.h"
#include "render/pdf.h"
#include "render/svg.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

namespace fs = std::filesystem;

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

/// SVG has no pages: the second sheet goes to name-2.svg.
std::string numbered(const std::string& output, int sheet) {
    const fs::path path{output};
    return sheet == 0
               ? output
               : (path.parent_path() / fmt::format("{}-{}.svg", path.stem().string(), sheet + 1))
                     .string();
}

void write_svgs(const std::string& output, const LaidOut& laid_out, const Job& job) {
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        write_whole_file(numbered(output, sheet),
                         render::svg(sheet_of(laid_out, sheet), laid_out.setup.fonts, job.title));
    }
}

/// Nothing leaves a print in silence.
void tell_left_out(const LaidOut& laid_out, const Job& job, const Days& days, Console console) {
    std::set<std::string> told;
    for (const auto& fitted : laid_out.fitting.prints) {
        std::string areas;
        const auto& layout = laid_out.setup.chosen.at(fitted.kind);
        for (const auto& area : report(fitted, layout, laid_out.setup.fonts)) {
            if (area.left_out) {
                areas += (areas.empty() ? "" : ", ") + area.area;
            }
        }
        const auto& dish = package_of(job.prints[fitted.print], days).package.dish;
        if (!areas.empty() && told.insert(dish + areas).second) {
            console.err << fmt::format("caution: left out for want of room: {} of \"{}\"\n", areas,
                                       dish);
        }
    }
}

std::string counted(std::size_t count, const std::string& noun) {
    return fmt::format("{} {}{}", count, noun, count == 1 ? "" : "s");
}

bool is_input(const std::string& output, const std::vector<std::string>& inputs) {
    return std::ranges::any_of(inputs, [&output](const std::string& input) {
        std::error_code error;
        return fs::equivalent(output, input, error) && !error;
    });
}

} // namespace

void write_job(const std::string& output, const LaidOut& laid_out, const Job& job) {
    if (output.ends_with(".svg")) {
        write_svgs(output, laid_out, job);
    } else {
        write_pdf(output, laid_out, job);
    }
}

ExitStatus run_job(const Job& job, const Days& days, const PrintOptions& options,
                   const Settings& settings, Console console) {
    const bool svg = options.output.ends_with(".svg");
    if (!svg && !options.output.ends_with(".pdf") && options.output != "-") {
        console.err << fmt::format("error: {} is neither .pdf nor .svg: the ending says what to "
                                   "write\n",
                                   options.output);
        return ExitStatus::Usage;
    }
    if (is_input(options.output, options.days)) {
        console.err << fmt::format("error: {} is the day's description itself; nothing written\n",
                                   options.output);
        return ExitStatus::Refused;
    }
    const auto result = lay_out(job, days, options, settings, console);
    if (!result) {
        return result.fault();
    }
    const auto& laid_out = result.value();
    tell_left_out(laid_out, job, days, console);
    write_job(options.output, laid_out, job);
    if (!job.recorded_as.empty() && settings.record_prints && options.record != Record::No) {
        record_print(job, days, laid_out, options, settings, console);
    }
    if (options.output != "-") {
        const auto sheets = static_cast<std::size_t>(laid_out.fitting.sheets);
        console.out << fmt::format("{}: {} on {} of {}; print at 100 %, not \"fit to page\"\n",
                                   options.output, counted(job.prints.size(), job.noun),
                                   counted(sheets, "sheet"), laid_out.setup.target.stock.name);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

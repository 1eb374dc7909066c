// Where the time goes: each stage of the flow by itself, in one process, for a day of some number
// of labels. Medians of several rounds; nothing here is a test.
//
// usage: stages_bench [LABELS]

#include "app/files/data_folder.h"
#include "app/files/day_files.h"
#include "base/text_file.h"
#include "days.h"
#include "intake/day_file.h"
#include "intake/storage_file.h"
#include "kitchen/plan.h"
#include "render/pdf.h"
#include "render/svg.h"
#include "service/print/lay_out.h"

#include <chrono>
#include <cstdlib>
#include <iostream>

using namespace thawslip;

namespace {

/// Microseconds that `work` takes, the median of some rounds.
template <class Work>
double microseconds(Work work) {
    constexpr std::size_t rounds = 5;
    std::vector<double> times;
    for (std::size_t i = 0; i < rounds; ++i) {
        const auto start = std::chrono::steady_clock::now();
        work();
        const std::chrono::duration<double, std::micro> time =
            std::chrono::steady_clock::now() - start;
        times.push_back(time.count());
    }
    std::ranges::nth_element(times, times.begin() + rounds / 2);
    return times[rounds / 2];
}

class Report {
public:
    explicit Report(int labels) : labels_{labels} {
        fmt::print("{:<36} {:>10} {:>12}\n", fmt::format("{} labels", labels), "ms", "us a label");
    }
    void tell(const char* stage, double microseconds) const {
        fmt::print("{:<36} {:>10.2f} {:>12.2f}\n", stage, microseconds / 1e3,
                   microseconds / labels_);
    }
    template <class Work>
    void time(const char* stage, Work work) const {
        tell(stage, microseconds(work));
    }

private:
    int labels_;
};

/// Reading and planning, file by file, as app::read_days does both at once.
void time_intake(const std::vector<std::string>& files, const Report& report) {
    const auto read = [](const std::string& file) {
        Diagnostics faults;
        const auto document =
            toml::parse(read_text_file(file, std::size_t{1} << 20U).value(), file, faults);
        return intake::read_day(document, faults).day;
    };
    report.time("read the day's files", [&] {
        for (const auto& file : files) {
            read(file);
        }
    });
    const auto table = intake::built_in_storage();
    std::vector<kitchen::Day> days;
    std::transform(files.begin(), files.end(), std::back_inserter(days), read);
    report.time("plan: dates, ids, cautions", [&] {
        Diagnostics faults;
        for (const auto& day : days) {
            kitchen::plan(day, table, faults, {});
        }
    });
}

void time_layout(const layout::Source& source, const service::LaidOut& laid_out,
                 const Report& report) {
    const auto& setup = laid_out.setup;
    auto without_codes = source;
    without_codes.print = [&source](std::size_t i) {
        auto print = source.print(i);
        print.has_code = false;
        return print;
    };
    const auto fit = [&setup](const layout::Source& prints) {
        return microseconds([&] {
            if (!layout::fit(prints, setup.chosen, setup.medium, setup.fonts)) {
                std::exit(1);
            }
        });
    };
    const double words = fit(without_codes);
    report.tell("say, shape and fit the words", words);
    report.tell("codes: say, choose, draw, read back", fit(source) - words);
    report.time("frames: break lines and place", [&] {
        for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
            draw_sheet(laid_out, sheet);
        }
    });
}

void time_render(const service::LaidOut& laid_out, const Report& report) {
    const auto& setup = laid_out.setup;
    std::vector<layout::Frame> frames;
    for (int sheet = 0; sheet < laid_out.fitting.sheets; ++sheet) {
        frames.push_back(draw_sheet(laid_out, sheet));
    }
    std::size_t bytes = 0;
    report.time("PDF", [&] {
        bytes = 0;
        render::PdfWriter writer{setup.fonts,
                                 {"Labels", "en", {}},
                                 [&bytes](std::string_view piece) { bytes += piece.size(); }};
        for (const auto& frame : frames) {
            writer.add(frame);
        }
        writer.finish();
    });
    report.time("of which faces and tables", [&] {
        const auto& first = frames.front();
        render::PdfWriter writer{setup.fonts, {"Labels", "en", {}}, [](std::string_view) {}};
        writer.add(first);
        writer.finish();
    });
    report.time("SVG", [&] {
        for (const auto& frame : frames) {
            render::svg(frame, setup.fonts, "Labels");
        }
    });
    fmt::print("PDF: {} bytes\n", bytes);
}

} // namespace

int main(int argc, char** argv) {
    const int labels = argc > 1 ? std::atoi(argv[1]) : 1000;
    const bench::Folder folder;
    const auto files = bench::write_days(folder, labels);
    const Report report{labels};
    time_intake(files, report);
    const service::Settings settings;
    const auto days = app::read_days(files, settings);
    const auto data = app::find_data_folder();
    report.time("open the faces", [&] { files::load_fonts(data); });
    const auto job = job_of(service::What::Labels, days, settings);
    const auto laid_out = lay_out(job, days, {}, settings, app::surroundings());
    if (!laid_out) {
        std::cerr << to_text(laid_out.messages);
        return 1;
    }
    time_layout(source_of(job, days, settings), *laid_out.value, report);
    time_render(*laid_out.value, report);
}

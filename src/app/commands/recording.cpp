#include "app/commands/recording.h"

#include "app/archive_place.h"
#include "app/clock.h"
#include "app/files/kept_files.h"
#include "app/files/output_guard.h"
#include "app/station.h"
#include "service/record/label_facts.h"
#include "service/record/made_otherwise.h"
#include "service/record/print_record.h"
#include "service/record/settle.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// Labels whose ids are other bags' by now are worse than none.
void take_back(const std::string& output, int sheets) {
    for (int sheet = 0; !output.empty() && output != "-" && sheet < sheets; ++sheet) {
        std::error_code gone_already;
        std::filesystem::remove(sheet_file(output, sheet), gone_already);
    }
}

/// Said once, with the first print: which paper was taken, and why.
std::string paper_text(const service::Printing& printing, const Settings& settings) {
    const auto& job = printing.job;
    const auto& stock = printing.laid_out.setup.stock;
    const bool is_usual = stock == job.default_stock || stock == job.roomy_stock;
    if (!is_usual || !settings_of(job.what, settings).stock.empty()) {
        return {}; // the stock was named
    }
    return fmt::format("note: this is laid out for {} paper ({}), {}. For other paper: --paper {}, "
                       "or once for all: thawslip setup\n",
                       settings.paper == "a4" ? "A4" : "US Letter", stock, why_paper(settings),
                       settings.paper == "a4" ? "letter" : "a4");
}

/// Where there is no archive yet it is made when the print is out: a print that fails leaves none.
/// \param news what there is to say of other bags is added
archive::Recorded record(const service::Printing& printing, archive::PrintRecord& print,
                         const Settings& settings, const std::function<void()>& publish,
                         service::Messages& news) {
    if (auto archive = existing_archive(settings, archive::Mode::Write)) {
        // What was named as people type it is looked up by its id, as it was when ids were settled.
        print.which = service::with_known_bags(*archive, print.which).value.value_or(print.which);
        const auto others = service::bags_of_other_additions(*archive, printing.days);
        auto recorded = archive->record(print, publish);
        for (const auto& id : others) {
            if (std::ranges::find(recorded.relabelled, id) == recorded.relabelled.end()) {
                recorded.relabelled.push_back(id);
            }
        }
        news = service::made_otherwise(*archive, print, recorded);
        return recorded;
    }
    publish();
    return open_archive(settings, archive::Mode::Write).record(print);
}

} // namespace

Raced::Raced(const std::string& why, bool is_out) : SystemFailure{why}, is_out_{is_out} {}

void record_print(const service::Printing& printing, const PrintOptions& options,
                  const Settings& settings, Console console, const std::function<void()>& publish) {
    auto print = print_record(printing, settings, options.which, station_now(), now_text());
    print.setup = with_lasting_names(std::move(print.setup));
    enum class Out { NotYet, Now, Done } out = Out::NotYet;
    const auto publish_once = [&] {
        out = Out::Now;
        publish();
        out = Out::Done;
    };
    try {
        service::Messages others;
        const auto recorded = record(printing, print, settings, publish_once, others);
        console.err << to_text(service::news_of(recorded, print, printing.job.chosen))
                    << to_text(others);
        if (recorded.is_first_print) {
            console.err << paper_text(printing, settings);
        }
    } catch (const std::exception& failure) {
        if (out == Out::Now) {
            throw; // it is not printed, and so not recorded
        }
        const auto* known = dynamic_cast<const archive::ArchiveFailure*>(&failure);
        if (known != nullptr && known->fault().kind == archive::ArchiveFault::Kind::Clash) {
            if (out == Out::Done) {
                take_back(options.output, printing.laid_out.fitting.sheets);
            }
            throw Raced{failure.what(), out == Out::Done};
        }
        if (out == Out::NotYet) {
            publish_once();
        }
        const auto& file = options.called.empty() ? options.output : options.called;
        const auto done = file.empty() ? "this print is at the printer" : file + " is written";
        throw SystemFailure{fmt::format("{}, but not recorded: {}\n    hint: print with "
                                        "--no-archive to do without",
                                        done, failure.what())};
    }
}

} // namespace thawslip::app

#include "app/recording.h"

#include "app/archive_place.h"
#include "app/clock.h"
#include "app/day_record.h"
#include "app/output_guard.h"
#include "app/print_setup.h"
#include "app/station.h"

#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// Said once, after the first print: what it did besides printing, and how that is undone.
void tell_first(const archive::PrintRecord& print, Console console) {
    for (const auto& day : print.days) {
        if (!day.packages.empty() && !day.packages.front().bags.empty()) {
            console.err << fmt::format(
                "note: the bags on these labels count as being in the freezer now. One that was "
                "not filled is taken back with: thawslip freezer thrown {}. To try out a printer "
                "or a sheet: --trial, which remembers nothing\n",
                day.packages.front().bags.front());
            return;
        }
    }
}

void tell(const archive::Recorded& recorded, Console console) {
    for (const auto& [before, now] : recorded.renamed) {
        console.err << fmt::format("note: bag {} is {} now: the name of its dish was changed; both "
                                   "ids are known\n",
                                   before, now);
    }
    for (const auto& id : recorded.relabelled) {
        console.err << fmt::format("caution: bag {} was printed before with other allergens or "
                                   "another kind of food: take its old label off\n",
                                   id);
    }
    for (const auto& id : recorded.dropped) {
        console.err << fmt::format("note: bag {} was printed before and is no longer described; if "
                                   "there is no such bag: thawslip freezer thrown {}\n",
                                   id, id);
    }
}

/// Labels whose ids are other bags' by now are worse than none.
void take_back(const std::string& output, int sheets) {
    for (int sheet = 0; !output.empty() && output != "-" && sheet < sheets; ++sheet) {
        std::error_code gone_already;
        std::filesystem::remove(sheet_file(output, sheet), gone_already);
    }
}

} // namespace

Raced::Raced(const std::string& why, bool is_out) : SystemFailure{why}, is_out_{is_out} {}

namespace {

archive::PrintRecord print_record(const Job& job, const Days& days, const LaidOut& laid_out,
                                  const PrintOptions& options, const Settings& settings) {
    archive::PrintRecord record{now_text(),
                                print_setup(job.recorded_as, laid_out, options, settings),
                                {},
                                station_now(),
                                options.which};
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        record.days.push_back(record_of(days, day));
    }
    return record;
}

/// Where there is no archive yet it is made when the print is out: a print that fails leaves none.
archive::Recorded record(const archive::PrintRecord& print, const Settings& settings,
                         const std::function<void()>& publish) {
    if (auto archive = existing_archive(settings, archive::Mode::Write)) {
        return archive->record(print, publish);
    }
    publish();
    return open_archive(settings, archive::Mode::Write).record(print);
}

} // namespace

void record_print(const Job& job, const Days& days, const LaidOut& laid_out,
                  const PrintOptions& options, const Settings& settings, Console console,
                  const std::function<void()>& publish) {
    const auto print = print_record(job, days, laid_out, options, settings);
    enum class Out { NotYet, Now, Done } out = Out::NotYet;
    const auto publish_once = [&] {
        out = Out::Now;
        publish();
        out = Out::Done;
    };
    try {
        const auto recorded = record(print, settings, publish_once);
        tell(recorded, console);
        if (recorded.is_first_print) {
            tell_first(print, console);
        }
    } catch (const std::exception& failure) {
        if (out == Out::Now) {
            throw; // it is not printed, and so not recorded
        }
        const auto* known = dynamic_cast<const archive::ArchiveFailure*>(&failure);
        if (known != nullptr && known->fault().kind == archive::ArchiveFault::Kind::Clash) {
            if (out == Out::Done) {
                take_back(options.output, laid_out.fitting.sheets);
            }
            throw Raced{failure.what(), out == Out::Done};
        }
        if (out == Out::NotYet) {
            publish_once();
        }
        const auto done = options.output.empty() ? "this print is at the printer"
                                                 : options.output + " is written";
        throw SystemFailure{fmt::format("{}, but not recorded: {}\n    hint: print with "
                                        "--no-archive to do without",
                                        done, failure.what())};
    }
}

} // namespace thawslip::app

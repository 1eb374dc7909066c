#include "app/recording.h"

#include "app/archive_place.h"
#include "app/clock.h"
#include "app/print_setup.h"
#include "kitchen/figures.h"
#include "unicode/ascii.h"

#include <algorithm>
#include <filesystem>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

std::vector<std::string> sorted(std::vector<std::string> words) {
    std::ranges::sort(words);
    // Not ranges::unique: clang 14 cannot compile GCC 12's subrange.
    words.erase(std::unique(words.begin(), words.end()), words.end());
    return words;
}

void add_names(std::vector<std::string>& names, const std::string& before,
               const std::vector<kitchen::DeclaredAllergen>& list) {
    for (const auto& declared : list) {
        for (const auto& named : declared.meant) {
            names.push_back(before + std::string{key(named.allergen)} +
                            (named.kind.empty() ? "" : " (" + named.kind + ")"));
        }
        if (declared.meant.empty()) {
            names.push_back(before + declared.as_written);
        }
    }
}

/// Allergens by what they mean, so that "Celery" and "celery" are one; what is on neither list as
/// it was written.
archive::FoodRecord food_of(const kitchen::PlannedPackage& planned) {
    std::vector<std::string> allergens;
    add_names(allergens, "", planned.allergens);
    add_names(allergens, "may contain ", planned.may_contain);
    return {sorted(std::move(allergens)), sorted(planned.package.food)};
}

archive::PackageRecord record_of(const kitchen::PlannedPackage& planned) {
    const auto& package = planned.package;
    archive::PackageRecord record{package.dish,
                                  unicode::fold_for_search(package.dish),
                                  planned.made,
                                  planned.keep_until.date,
                                  planned.keep_until.basis,
                                  package.servings,
                                  package.weight,
                                  food_of(planned),
                                  archive::ThawRecord{package.thaw.method, allowed_thaw(planned)},
                                  {}};
    for (const auto& bag : planned.bags) {
        record.bags.push_back(bag.id);
    }
    return record;
}

archive::DayRecord record_of(const Days& days, std::size_t day) {
    const auto& plan = days.plans[day];
    archive::DayRecord record{
        plan.made,
        plan.kitchen,
        std::filesystem::absolute(days.documents[day].file()).lexically_normal().string(),
        days.as_written[day],
        {}};
    for (const auto& planned : plan.packages) {
        record.packages.push_back(record_of(planned));
    }
    return record;
}

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

} // namespace

void record_print(const Job& job, const Days& days, const LaidOut& laid_out,
                  const PrintOptions& options, const Settings& settings, Console console) {
    archive::PrintRecord record{
        now_text(), print_setup(job.recorded_as, laid_out, options, settings), {}};
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        record.days.push_back(record_of(days, day));
    }
    try {
        auto archive = open_archive(settings, archive::Mode::Write);
        const auto recorded = archive.record(record);
        tell(recorded, console);
        if (recorded.is_first_print) {
            tell_first(record, console);
        }
    } catch (const std::exception& failure) {
        const auto done = options.output.empty() ? "this print is at the printer"
                                                 : options.output + " is written";
        throw SystemFailure{fmt::format("{}, but not recorded: {}\n    hint: print with "
                                        "--no-archive to do without",
                                        done, failure.what())};
    }
}

} // namespace thawslip::app

#include "service/record/print_record.h"

#include "service/record/day_record.h"
#include "service/record/print_setup.h"

#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// Said once, after the first print: what it did besides printing, and how that is undone.
void add_first(Messages& messages, const archive::PrintRecord& print) {
    for (const auto& day : print.days) {
        if (!day.packages.empty() && !day.packages.front().bags.empty()) {
            messages.note(fmt::format(
                "the bags on these labels count as being in the freezer now. One that was "
                "not filled is taken back with: thawslip freezer discarded {}. To try out a "
                "printer "
                "or a sheet: --trial, which remembers nothing",
                day.packages.front().bags.front()));
            return;
        }
    }
}

} // namespace

archive::PrintRecord print_record(const Printing& printing, const Look& look,
                                  const Settings& settings, const archive::WhichBatch& which,
                                  const archive::Station& station, const std::string& at) {
    const auto& [days, job, laid_out] = printing;
    archive::PrintRecord record{
        at, print_setup(job.what, laid_out, look, settings), {}, station, which};
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        record.days.push_back(record_of(days, day));
    }
    return record;
}

Messages news_of(const archive::Recorded& recorded, const archive::PrintRecord& print) {
    Messages messages;
    for (const auto& [before, now] : recorded.renamed) {
        messages.note(fmt::format(
            "bag {} is {} now: the name of its dish was changed; both ids are known", before, now));
    }
    for (const auto& id : recorded.relabelled) {
        messages.caution(fmt::format("bag {} was printed before with other allergens or another "
                                     "kind of food: take its old label off",
                                     id));
    }
    for (const auto& id : recorded.dropped) {
        messages.note(fmt::format("bag {} was printed before and is no longer described; if there "
                                  "is no such bag: thawslip freezer discarded {}",
                                  id, id));
    }
    if (recorded.is_first_print) {
        add_first(messages, print);
    }
    return messages;
}

} // namespace thawslip::service

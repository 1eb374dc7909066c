#include "service/record/print_record.h"

#include "service/print/used_sheet.h"
#include "service/record/day_record.h"
#include "service/record/print_setup.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

bool is_printed(const std::string& id, const Chosen& chosen) {
    return !chosen.bags || chosen.bags->contains(id);
}

/// The first bag that was printed; empty where there is none.
std::string first_bag(const archive::PrintRecord& print, const Chosen& chosen) {
    for (const auto& day : print.days) {
        for (const auto& package : day.packages) {
            const auto found = std::ranges::find_if(
                package.bags, [&chosen](const auto& id) { return is_printed(id, chosen); });
            if (found != package.bags.end()) {
                return *found;
            }
        }
    }
    return {};
}

/// Said once, after the first print: what it did besides printing, and how that is undone.
void add_first(Messages& messages, const archive::PrintRecord& print, const Chosen& chosen) {
    const auto id = first_bag(print, chosen);
    if (!id.empty()) {
        messages.note(fmt::format(
            "the bags printed here count as being in the freezer now. One that was "
            "not filled is taken back with: thawslip freezer never-filled {}. To try out a "
            "printer or a sheet: --trial, which remembers nothing",
            id));
    }
}

/// What an old label says wrong harms somebody, so a bag whose new one is not printed yet is said.
void add_relabelled(Messages& messages, const std::vector<std::string>& bags,
                    const Chosen& chosen) {
    for (const auto& id : bags) {
        messages.caution(fmt::format("bag {} was printed before with other allergens, another kind "
                                     "of food or a later date to use it by: take its old label off",
                                     id),
                         is_printed(id, chosen)
                             ? std::vector<std::string>{}
                             : std::vector<std::string>{fmt::format(
                                   "its new one is not among these: --bag {}, or --only-new for "
                                   "all that is missing",
                                   id)});
    }
}

} // namespace

archive::PrintRecord print_record(const Printing& printing, const Settings& settings,
                                  const archive::WhichBatch& which, const archive::Station& station,
                                  const std::string& at) {
    const auto& days = printing.days;
    archive::PrintRecord record{
        at,
        print_setup(printing.job.what, printing.laid_out, printing.look, settings),
        {},
        station,
        which,
        {},
        stopped_at(printing.laid_out, at)};
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        record.days.push_back(record_of(days, day));
    }
    if (printing.job.chosen.bags) {
        record.part = printing.look.part.ids;
    }
    return record;
}

Messages news_of(const archive::Recorded& recorded, const archive::PrintRecord& print,
                 const Chosen& chosen) {
    Messages messages;
    for (const auto& [before, now] : recorded.renamed) {
        messages.note(fmt::format(
            "bag {} is {} now: the name of its dish, or its size, was changed; both ids are known",
            before, now));
    }
    add_relabelled(messages, recorded.relabelled, chosen);
    for (const auto& id : recorded.dropped) {
        messages.note(
            fmt::format("bag {} was printed before and is no longer described; if there "
                        "is no such bag: thawslip freezer never-filled {}; if its dish has "
                        "another name now: thawslip freezer renamed {} \"NEW NAME\"",
                        id, id, id));
    }
    if (recorded.is_first_print) {
        add_first(messages, print, chosen);
    }
    return messages;
}

} // namespace thawslip::service

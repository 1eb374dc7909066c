#include "service/print/printing.h"

#include "base/counted.h"
#include "service/day/day_cautions.h"
#include "service/day/door_rows.h"
#include "service/print/chosen_part.h"
#include "service/record/settle.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// The look with what it came to: a print that is made again from it is of the same bags, on the
/// same cells.
Look settled(Look look, const LaidOut& laid_out, const Job& job, const Days& days) {
    const auto& imposition = laid_out.setup.medium.imposition;
    look.first_cell = imposition.first_cell;
    look.skip = imposition.skipped_cells;
    look.dots_per_inch = laid_out.setup.medium.printer.per_inch;
    Part part;
    part.copies = job.chosen.copies;
    if (job.chosen.bags) {
        for (const auto& bag : bags_in(days)) {
            if (job.chosen.bags->contains(bag.id)) {
                part.ids.push_back(bag.id);
            }
        }
    }
    look.part = std::move(part);
    return look;
}

/// Lays a job out, and says what it leaves out.
Outcome<Printing> laid_out(Job job, Days days, const Look& look, const Settings& settings,
                           const Surroundings& around) {
    Outcome<Printing> outcome;
    if (count_chosen(job, days) == 0) {
        const auto why = why_nothing(job, look.part);
        job.prints.clear();
        outcome.value = Printing{std::move(days), std::move(job), {}, look, why};
        return outcome;
    }
    auto result = lay_out(job, days, look, settings, around);
    outcome.messages = std::move(result.messages);
    if (result) {
        outcome.messages.add(left_out(*result.value, job, days));
        auto with = settled(look, *result.value, job, days);
        outcome.value = Printing{
            std::move(days), std::move(job), std::move(*result.value), std::move(with), {}};
    }
    return outcome;
}

std::vector<NamedBag> bags_in(const std::vector<wording::DoorRow>& rows) {
    std::vector<NamedBag> bags;
    for (const auto& row : rows) {
        for (const auto& bag : row.bags) {
            bags.push_back({row.dish, bag.id, bag.number});
        }
    }
    return bags;
}

/// Labels that are missing are said where a part is printed: nobody else would notice.
void note_without_labels(What what, const Days& days, const Chosen& chosen, const Look& look,
                         const Surroundings& around, Messages& messages) {
    if (what != What::Labels || !chosen.bags || look.is_trial) {
        return;
    }
    const auto printed = known_bags(what, days, around).printed();
    const auto bags = bags_in(days);
    const auto without = std::ranges::count_if(bags, [&](const NamedBag& bag) {
        return !chosen.bags->contains(bag.id) && !printed.contains(bag.id);
    });
    if (without > 0) {
        messages.note(
            fmt::format("{} of {} {} described now, besides these: --only-new prints "
                        "what is missing",
                        counted(without, "bag"), days.plans.size() == 1 ? "this day" : "these days",
                        without == 1 ? "has no label as it is" : "have no label as they are"));
    }
}

/// No other rows, and of those no other bags.
void keep_bags(std::vector<wording::DoorRow>& rows, const std::set<std::string>& bags) {
    for (auto& row : rows) {
        std::erase_if(row.bags,
                      [&](const wording::DoorBag& bag) { return !bags.contains(bag.id); });
    }
    std::erase_if(rows, [](const wording::DoorRow& row) { return row.bags.empty(); });
}

} // namespace

Outcome<Printing> print(const DayTexts& texts, What what, const Look& look,
                        const Settings& settings, const Surroundings& around) {
    Outcome<Printing> outcome;
    const auto planned = plan_days(texts, settings, Ids::Planned); // values; dates, cautions
    auto days = settle(planned, around.ids, settings);             // ids that no other bag has
    outcome.messages.add(days.messages);
    if (!days) {
        return outcome;
    }
    outcome.messages.add(cautions_of(*days.value, settings));
    const auto chosen =
        choose_part(what, *days.value, look.part, settings, around); // all bags, or a part
    outcome.messages.add(chosen.messages);
    if (!chosen) {
        return outcome;
    }
    note_without_labels(what, *days.value, *chosen.value, look, around, outcome.messages);
    auto job = job_of(what, *days.value, settings, *chosen.value); // which labels, cards or lists
    auto printing = laid_out(std::move(job), std::move(*days.value), look, settings, around);
    outcome.messages.add(printing.messages);
    outcome.value = std::move(printing.value);
    return outcome;
}

Outcome<Printing> print_door_list(std::vector<wording::DoorRow> rows, const Look& look,
                                  const Settings& settings, const Surroundings& around) {
    Outcome<Printing> outcome;
    if (!rows.empty() && !is_whole(look.part)) {
        const auto bags = bags_in(rows);
        PartSource source; // what is in the freezer has its labels
        source.printed = [&bags] { return ids_of(bags); };
        const auto part = bags_of_part(bags, look.part, source);
        outcome.messages = part.messages;
        if (!part) {
            return outcome;
        }
        keep_bags(rows, *part.value);
    }
    if (rows.empty()) {
        outcome.value.emplace();
        outcome.value->why_nothing =
            look.part.only_new ? "each bag has its label" : "there is no bag";
        return outcome;
    }
    outcome.messages.add(make_settable(rows, around.fonts()));
    auto printing =
        laid_out(door_list_job(rows, settings, copies_of(What::DoorList, look.part, settings)), {},
                 look, settings, around);
    outcome.messages.add(printing.messages);
    outcome.value = std::move(printing.value);
    return outcome;
}

Outcome<std::vector<std::string>> code_texts(const DayTexts& texts, const Look& look,
                                             const Settings& settings, const Surroundings& around) {
    Outcome<std::vector<std::string>> outcome;
    const auto planned = plan_days(texts, settings, Ids::Planned);
    const auto days = settle(planned, around.ids, settings);
    outcome.messages.add(days.messages);
    if (!days) {
        return outcome;
    }
    const auto labels =
        lay_out(job_of(What::Labels, *days.value, settings), *days.value, look, settings, around);
    outcome.messages.add(labels.messages);
    if (labels) {
        outcome.value.emplace();
        for (const auto& print : labels.value->fitting.prints) {
            if (print.symbol) {
                outcome.value->push_back(print.symbol->text);
            }
        }
    }
    return outcome;
}

} // namespace thawslip::service

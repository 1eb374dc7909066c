#include "service/print/printing.h"

#include "service/day/day_cautions.h"
#include "service/day/door_rows.h"
#include "service/record/settle.h"

namespace thawslip::service {
namespace {

/// Lays a job out, and says what it leaves out.
Outcome<Printing> laid_out(Job job, Days days, const Look& look, const Settings& settings,
                           const Surroundings& around) {
    Outcome<Printing> outcome;
    if (job.prints.empty()) {
        outcome.value = Printing{std::move(days), std::move(job), {}};
        return outcome;
    }
    auto result = lay_out(job, days, look, settings, around);
    outcome.messages = std::move(result.messages);
    if (result) {
        outcome.messages.add(left_out(*result.value, job, days));
        outcome.value = Printing{std::move(days), std::move(job), std::move(*result.value)};
    }
    return outcome;
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
    auto job = job_of(what, *days.value, settings); // which labels, cards or lists
    auto printing = laid_out(std::move(job), std::move(*days.value), look, settings, around);
    outcome.messages.add(printing.messages);
    outcome.value = std::move(printing.value);
    return outcome;
}

Outcome<Printing> print_door_list(std::vector<wording::DoorRow> rows, const Look& look,
                                  const Settings& settings, const Surroundings& around) {
    Outcome<Printing> outcome;
    if (rows.empty()) {
        outcome.value.emplace();
        return outcome;
    }
    outcome.messages = make_settable(rows, around.fonts());
    auto printing = laid_out(door_list_job(rows, settings), {}, look, settings, around);
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

#include "service/print/preview.h"

#include "service/print/chosen_part.h"
#include "service/print/lay_out.h"
#include "service/record/settle.h"

#include <algorithm>
#include <utility>

namespace thawslip::service {
namespace {

bool is_of_package(const PrintOf& of, const Days& days) {
    return of.day < days.plans.size() && of.package < days.plans[of.day].packages.size() &&
           (of.kind == wording::Kind::BagLabel || of.kind == wording::Kind::FinishingCard ||
            of.kind == wording::Kind::CookDayCard);
}

bool are_of_one_dish(const PrintOf& one, const PrintOf& other) {
    return one.kind == other.kind && one.day == other.day && one.package == other.package;
}

/// How many prints like this one are chosen.
int count_like(const PrintOf& of, const Job& job, const Days& days) {
    return static_cast<int>(std::ranges::count_if(job.prints, [&](const PrintOf& other) {
        return are_of_one_dish(of, other) && is_chosen(other, job, days);
    }));
}

Sample sample_of(const layout::FittedPrint& fitted, const LaidOut& laid_out, const Job& job,
                 const Days& days) {
    const auto& setup = laid_out.setup;
    const auto& layout = setup.chosen.at(fitted.kind);
    Sample sample;
    sample.of = job.prints[fitted.print];
    sample.name = dish_name_of(sample.of, job, days);
    if (is_of_package(sample.of, days)) {
        sample.where = package_of(sample.of, days).package.where;
    }
    sample.copies = count_like(sample.of, job, days);
    sample.frame = draw_alone(fitted, layout, setup.medium, setup.fonts);
    sample.areas = report(fitted, layout);
    return sample;
}

/// The first print of each dish, with all of its cards.
std::vector<Sample> samples_of(const LaidOut& laid_out, const Job& job, const Days& days) {
    std::vector<Sample> samples;
    std::size_t print = 0;
    for (const auto& fitted : laid_out.fitting.prints) {
        const auto& of = job.prints[fitted.print];
        const bool is_more = !samples.empty() && are_of_one_dish(samples.back().of, of);
        if (!is_more || print == fitted.print) {
            samples.push_back(sample_of(fitted, laid_out, job, days));
            samples.back().card = is_more ? samples.end()[-2].card + 1 : 1;
            print = fitted.print;
        }
    }
    return samples;
}

} // namespace

Outcome<Preview> preview(const DayTexts& texts, What what, const Look& look,
                         const Settings& settings, const Surroundings& around) {
    Outcome<Preview> outcome;
    auto days = settle(plan_days(texts, settings, Ids::Planned), around.ids, settings);
    outcome.messages = std::move(days.messages);
    if (!days) {
        return outcome;
    }
    auto& preview = outcome.value.emplace(Preview{std::move(*days.value), {}, {}, {}});
    const auto chosen = choose_part(what, preview.days, look.part, settings, around);
    outcome.messages.add_new(chosen.messages);
    if (!chosen) {
        return outcome;
    }
    auto job = job_of(what, preview.days, settings, *chosen.value);
    if (count_chosen(job, preview.days) == 0) {
        preview.why_nothing = why_nothing(job, look.part);
        return outcome;
    }
    const int copies = std::exchange(job.chosen.copies, 1);
    if (is_whole(look.part)) { // else the first of a dish may not be among the chosen
        job.which = layout::Which::FirstOfDish;
    }
    const auto laid_out = lay_out(job, preview.days, look, settings, around);
    outcome.messages.add_new(laid_out.messages);
    if (laid_out) {
        preview.samples = samples_of(*laid_out.value, job, preview.days);
        for (auto& sample : preview.samples) {
            sample.copies *= copies;
        }
        preview.fonts = laid_out.value->setup.fonts;
    }
    return outcome;
}

} // namespace thawslip::service

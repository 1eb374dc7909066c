#include "service/reprint/reprint.h"

#include "service/freezer/gone_bags.h"
#include "service/freezer/packages_of_bags.h"
#include "service/record/print_setup.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

/// A print of the archive read and planned again.
struct Remade {
    Job job;
    Days days;
    Settings settings;
    Look look;
};

std::string name_of(const archive::StoredDay& day) {
    return day.file.empty() ? "the description of " + kitchen::to_iso(day.made) : day.file;
}

std::optional<Remade> remake(archive::Archive& archive, const archive::StoredPrint& print,
                             Messages& messages) {
    auto with = printed_with(print.setup);
    std::vector<DayText> texts;
    for (const auto key : print.days) {
        const auto day = archive.day(key);
        if (day.is_rotten) {
            refuse_rotten(day, messages);
            return std::nullopt;
        }
        texts.push_back({name_of(day), day.description, day.batches});
    }
    Remade remade{{}, plan_days(texts, with.settings), with.settings, with.look};
    if (has_errors(remade.days.diagnostics)) {
        messages.add(remade.days.diagnostics, remade.days.documents);
        return std::nullopt;
    }
    remade.job = job_of(what_kept_as(print.setup.what), remade.days, remade.settings);
    return remade;
}

/// The prints that are wanted of those fitted: by their bag, or by a bag of their dish where a
/// print serves the whole dish.
void keep_wanted(LaidOut& laid_out, const Remade& remade, const std::set<std::string>& bags) {
    const auto wanted = [&bags](const kitchen::Bag& bag) { return bags.contains(bag.id); };
    std::erase_if(laid_out.fitting.prints, [&](const layout::FittedPrint& fitted) {
        const auto& of = remade.job.prints[fitted.print];
        const auto& planned = package_of(of, remade.days);
        return of.kind == wording::Kind::CookDayCard ? std::ranges::none_of(planned.bags, wanted)
                                                     : !wanted(planned.bags[of.bag]);
    });
}

void note_changes(const WantedPrint& wanted, const LaidOut& laid_out,
                  const std::vector<std::string>& changed_files, Messages& messages) {
    if (wanted.print.setup.look.empty()) {
        return;
    }
    const auto since = wanted.print.first_at.substr(0, 10);
    for (const auto& what : changed_files) {
        messages.note(fmt::format("{} since {}: printed as it was then", what, since));
    }
    for (const auto& what : changed_look(wanted.print.setup.look, look_of(laid_out))) {
        messages.note(
            fmt::format("{} has changed since {}: this print may look different", what, since));
    }
}

/// The bags of a whole print that are printed again: those that a merge left out, whose ids are on
/// other bags here, are not, and are named.
std::set<std::string> bags_of_print(archive::Archive& archive, const WantedPrint& wanted,
                                    const Days& days, Messages& messages) {
    std::set<std::string> bags;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        const auto& packages = days.plans[day].packages;
        for (std::size_t i = 0; i < packages.size(); ++i) {
            for (const auto& bag : packages[i].bags) {
                if (archive.is_of(bag.id, wanted.print.days[day], i)) {
                    bags.insert(bag.id);
                } else {
                    messages.caution(fmt::format(
                        "bag {} of \"{}\" is not printed again: it was left out of a merge, or is "
                        "described elsewhere by now, and that id may be on another bag",
                        bag.id, packages[i].package.dish));
                }
            }
        }
    }
    return bags;
}

/// The newest description of those that hold for `bags` by now, where it is not the day's own.
std::optional<archive::StoredDay> later_description(archive::Archive& archive, archive::DayKey key,
                                                    const std::set<std::string>& bags,
                                                    const kitchen::Plan& plan) {
    const auto day = archive.day(key);
    std::optional<archive::StoredDay> latest;
    for (const auto& planned : plan.packages) {
        for (const auto& printed : planned.bags) {
            const auto bag = bags.contains(printed.id) ? archive.bag(printed.id) : std::nullopt;
            if (!bag || bag->day == key || (latest && bag->day == latest->key)) {
                continue;
            }
            auto holds = archive.day(bag->day);
            if (holds.description != day.description &&
                (!latest || latest->recorded < holds.recorded)) {
                latest = std::move(holds);
            }
        }
    }
    return latest;
}

/// Labels of bags whose description was edited since are told of: what they say may be wrong by
/// now. Where bags or a dish were named, what holds now is printed.
void mind_revisions(archive::Archive& archive, const WantedPrint& wanted, const Days& days,
                    const std::set<std::string>& bags, Messages& messages) {
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        const auto& plan = days.plans[day];
        if (const auto later = later_description(archive, wanted.print.days[day], bags, plan)) {
            messages.caution(fmt::format(
                "the description of {} was edited and printed again on {}: this is the print of "
                "before; name bags or a dish to have what holds now",
                kitchen::to_iso(plan.made), later->recorded.substr(0, 10)));
        }
    }
}

void mind_gone(archive::Archive& archive, const WantedPrint& wanted,
               const std::set<std::string>& printed, Messages& messages) {
    if (!is_labels(wanted.print)) {
        return;
    }
    for (const auto key : wanted.print.days) {
        auto bags = archive.bags_of(key);
        std::erase_if(bags, [&](const archive::Bag& bag) { return !printed.contains(bag.id); });
        messages.add(cautions_of_gone(bags));
    }
}

/// As it was printed, but for what is asked for now.
Look look_for(const WantedPrint& wanted, Look look, const ReprintLook& asked) {
    if (!asked.stock.empty()) {
        look.stock = asked.stock;
        look.layout.clear();
        look.kept.clear();
    }
    if (!wanted.whole || asked.first_cell || !asked.spoiled.empty()) {
        look.first_cell = asked.first_cell.value_or(1);
        look.spoiled = asked.spoiled;
    }
    return look;
}

std::optional<Reprint> lay_out_again(archive::Archive& archive, const WantedPrint& wanted,
                                     const ReprintLook& asked, const Surroundings& around,
                                     const ChangedFiles& changed_files, Messages& messages) {
    auto remade = remake(archive, wanted.print, messages);
    if (!remade) {
        return std::nullopt;
    }
    const auto look = look_for(wanted, remade->look, asked);
    auto result = lay_out(remade->job, remade->days, look, remade->settings, around);
    messages.add(result.messages);
    if (!result) {
        return std::nullopt;
    }
    auto& laid_out = *result.value;
    note_changes(wanted, laid_out, changed_files(look.kept), messages);
    const auto bags =
        wanted.whole ? bags_of_print(archive, wanted, remade->days, messages) : wanted.bags;
    if (wanted.whole) {
        mind_revisions(archive, wanted, remade->days, bags, messages);
    }
    mind_gone(archive, wanted, bags, messages);
    keep_wanted(laid_out, *remade, bags);
    return Reprint{std::move(laid_out), std::move(remade->job)};
}

/// Adds what was fitted for one print to what stands already on the sheets.
/// \returns whether it could: they share a stock and layouts
bool append(LaidOut& all, LaidOut more) {
    const auto& first = all.setup;
    const bool alike =
        first.own == more.setup.own && first.medium.stock.name == more.setup.medium.stock.name &&
        std::ranges::equal(
            first.chosen, more.setup.chosen, {}, [](const auto& c) { return c.second.name; },
            [](const auto& c) { return c.second.name; });
    if (alike) {
        std::ranges::move(more.fitting.prints, std::back_inserter(all.fitting.prints));
    }
    return alike;
}

} // namespace

Outcome<Reprint> reprint(archive::Archive& archive, const std::vector<WantedPrint>& prints,
                         const ReprintLook& asked, const Surroundings& around,
                         const ChangedFiles& changed_files) {
    Outcome<Reprint> outcome;
    std::optional<Reprint> all;
    for (const auto& wanted : prints) {
        auto one = lay_out_again(archive, wanted, asked, around, changed_files, outcome.messages);
        if (!one) {
            return outcome;
        }
        if (!all) {
            all = std::move(one);
        } else if (!append(all->laid_out, std::move(one->laid_out))) {
            outcome.messages.error("these were printed on different stocks or with different "
                                   "layouts; nothing written",
                                   {"name one with --stock, or print them one after the other"});
            return outcome;
        }
    }
    place_prints(all->laid_out.fitting, all->laid_out.setup.medium);
    if (all->laid_out.fitting.prints.empty()) {
        outcome.messages.error("there is nothing to print for these bags");
    } else {
        outcome.value = std::move(all);
    }
    return outcome;
}

} // namespace thawslip::service

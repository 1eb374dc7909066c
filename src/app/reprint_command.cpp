#include "app/archive_bags.h"
#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/clock.h"
#include "app/commands/print_job.h"
#include "app/commands/report.h"
#include "app/counted.h"
#include "app/files/day_files.h"
#include "app/files/kept_files.h"
#include "app/files/shelf.h"
#include "app/wanted_prints.h"
#include "service/record/print_setup.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

/// A print of the archive made again.
struct Remade {
    service::Job job;
    Days days;
    Settings settings;
    Look look;
};

std::string name_of(const archive::StoredDay& day) {
    return day.file.empty() ? "the description of " + kitchen::to_iso(day.made) : day.file;
}

std::optional<Remade> remake(archive::Archive& archive, const archive::StoredPrint& print,
                             const Settings& settings, Console console) {
    auto with = service::printed_with(print.setup);
    std::vector<DayText> texts;
    for (const auto key : print.days) {
        const auto day = archive.day(key);
        if (day.is_rotten) {
            console.err << fmt::format("error: {}\n", rotten_text(day));
            return std::nullopt;
        }
        texts.push_back({name_of(day), day.description, day.batches});
    }
    Remade remade{{}, plan_days(texts, with.settings), with.settings, with.look};
    remade.settings.archive = settings.archive;
    if (has_errors(remade.days.diagnostics)) {
        app::print(console.err, remade.days.diagnostics, remade.days.documents);
        return std::nullopt;
    }
    remade.job = job_of(service::what_kept_as(print.setup.what), remade.days, remade.settings);
    return remade;
}

/// The prints that are wanted of those fitted: by their bag, or by a bag of their dish where a
/// print serves the whole dish.
void keep_wanted(service::LaidOut& laid_out, const Remade& remade,
                 const std::set<std::string>& bags) {
    const auto wanted = [&bags](const kitchen::Bag& bag) { return bags.contains(bag.id); };
    std::erase_if(laid_out.fitting.prints, [&](const layout::FittedPrint& fitted) {
        const auto& of = remade.job.prints[fitted.print];
        const auto& planned = package_of(of, remade.days);
        return of.kind == wording::Kind::CookDayCard ? std::ranges::none_of(planned.bags, wanted)
                                                     : !wanted(planned.bags[of.bag]);
    });
}

void tell_changes(const WantedPrint& wanted, const service::LaidOut& laid_out, const Look& look,
                  Console console) {
    if (wanted.print.setup.look.empty()) {
        return;
    }
    for (const auto& what : changed_files(look.kept)) {
        console.err << fmt::format("note: {} since {}: printed as it was then\n", what,
                                   wanted.print.first_at.substr(0, 10));
    }
    for (const auto& what : service::changed_look(wanted.print.setup.look, look_of(laid_out))) {
        console.err << fmt::format("note: {} has changed since {}: this print may look different\n",
                                   what, wanted.print.first_at.substr(0, 10));
    }
}

/// The bags of a whole print that are printed again: those that a merge left out, whose ids are on
/// other bags here, are not, and are named.
std::set<std::string> bags_of_print(archive::Archive& archive, const WantedPrint& wanted,
                                    const Days& days, Console console) {
    std::set<std::string> bags;
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        const auto& packages = days.plans[day].packages;
        for (std::size_t i = 0; i < packages.size(); ++i) {
            for (const auto& bag : packages[i].bags) {
                if (archive.is_of(bag.id, wanted.print.days[day], i)) {
                    bags.insert(bag.id);
                } else {
                    console.err << fmt::format(
                        "caution: bag {} of \"{}\" is not printed again: it was left out of a "
                        "merge, or "
                        "is described elsewhere by now, and that id may be on another bag\n",
                        bag.id, packages[i].package.dish);
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
void tell_revisions(archive::Archive& archive, const WantedPrint& wanted, const Days& days,
                    const std::set<std::string>& bags, Console console) {
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        const auto& plan = days.plans[day];
        if (const auto later = later_description(archive, wanted.print.days[day], bags, plan)) {
            console.err << fmt::format(
                "caution: the description of {} was edited and printed again on {}: this is the "
                "print of before; name bags or a dish to have what holds now\n",
                kitchen::to_iso(plan.made), later->recorded.substr(0, 10));
        }
    }
}

void report_gone_among(archive::Archive& archive, const WantedPrint& wanted,
                       const std::set<std::string>& printed, Console console) {
    if (!is_labels(wanted.print)) {
        return;
    }
    for (const auto key : wanted.print.days) {
        auto bags = archive.bags_of(key);
        std::erase_if(bags, [&](const archive::Bag& bag) { return !printed.contains(bag.id); });
        console.err << to_text(service::cautions_of_gone(bags));
    }
}

/// As it was printed, but for what is asked for now.
Look look_for(const WantedPrint& wanted, Look look, const ReprintOptions& asked) {
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

/// Prints of the archive, laid out again, and the job that names them.
struct Reprint {
    service::LaidOut laid_out;
    service::Job job;
};

Result<Reprint, ExitStatus> lay_out_again(archive::Archive& archive, const WantedPrint& wanted,
                                          const ReprintOptions& options, const Settings& settings,
                                          Console console) {
    auto remade = remake(archive, wanted.print, settings, console);
    if (!remade) {
        return Failure{ExitStatus::Refused};
    }
    const auto look = look_for(wanted, remade->look, options);
    auto result = lay_out(remade->job, remade->days, look, remade->settings, surroundings());
    console.err << to_text(result.messages);
    if (!result) {
        return Failure{ExitStatus::Refused};
    }
    auto laid_out = std::move(*result.value);
    tell_changes(wanted, laid_out, look, console);
    const auto bags =
        wanted.whole ? bags_of_print(archive, wanted, remade->days, console) : wanted.bags;
    if (wanted.whole) {
        tell_revisions(archive, wanted, remade->days, bags, console);
    }
    report_gone_among(archive, wanted, bags, console);
    keep_wanted(laid_out, *remade, bags);
    return Reprint{std::move(laid_out), std::move(remade->job)};
}

/// Adds what was fitted for one print to what stands already on the sheets.
/// \returns whether it could: they share a stock and layouts
bool append(service::LaidOut& all, service::LaidOut more) {
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

/// All that is wanted, one print after the other on the same sheets.
Result<Reprint, ExitStatus> lay_out_all(archive::Archive& archive,
                                        const std::vector<WantedPrint>& prints,
                                        const ReprintOptions& options, const Settings& settings,
                                        Console console) {
    std::optional<Reprint> all;
    for (const auto& wanted : prints) {
        auto one = lay_out_again(archive, wanted, options, settings, console);
        if (!one) {
            return one;
        }
        if (!all) {
            all = std::move(one).value();
        } else if (!append(all->laid_out, std::move(one).value().laid_out)) {
            console.err << "error: these were printed on different stocks or with different "
                           "layouts; nothing written\n"
                           "    hint: name one with --stock, or print them one after the other\n";
            return Failure{ExitStatus::Refused};
        }
    }
    place_prints(all->laid_out.fitting, all->laid_out.setup.medium);
    if (all->laid_out.fitting.prints.empty()) {
        console.err << "error: there is nothing to print for these bags\n";
        return Failure{ExitStatus::Refused};
    }
    return *std::move(all);
}

} // namespace

ExitStatus reprint(const ReprintOptions& options, const Settings& settings, Console console) {
    const Output output{options.output, print_endings, {options.stock}};
    const auto printer = usable_destination(output, options.printer, settings, console);
    if (!printer) {
        return printer.fault();
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << "error: nothing has been printed yet\n";
        return ExitStatus::Refused;
    }
    const auto prints = find_prints(*archive, options, console);
    if (!prints) {
        return ExitStatus::Refused;
    }
    const auto all = lay_out_all(*archive, *prints, options, settings, console);
    if (!all) {
        return all.fault();
    }
    const auto& [laid_out, job] = all.value();
    if (const auto refused =
            refuse_sheets(output, laid_out.fitting.sheets, options.overwrite, settings, console)) {
        return *refused;
    }
    const auto status = deliver_job(laid_out, job, options.output, printer.value(), console);
    if (status == ExitStatus::Done && options.output != "-") {
        console.out << closing_line(laid_out, counted(laid_out.fitting.prints.size(), job.noun),
                                    options.output);
    }
    return status;
}

} // namespace thawslip::app

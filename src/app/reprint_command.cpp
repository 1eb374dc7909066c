#include "app/archive_bags.h"
#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/clock.h"
#include "app/counted.h"
#include "app/input_file.h"
#include "app/lay_out.h"
#include "app/make_prints.h"
#include "app/print_setup.h"
#include "app/report.h"

#include <algorithm>
#include <fmt/format.h>
#include <map>
#include <ostream>
#include <set>

namespace thawslip::app {
namespace {

/// One print of the archive and the bags of it that are wanted.
struct Part {
    archive::StoredPrint print;
    std::set<std::string> bags; ///< newest ids
    bool whole = false;
};

bool is_labels(const archive::StoredPrint& print) {
    return print.setup.what == "labels";
}

bool is_kind(const archive::StoredPrint& print, ReprintKind kind) {
    return is_labels(print) == (kind == ReprintKind::Labels);
}

/// The newest print of a day of the kind wanted; of the other kind, on the usual stock, where
/// that was never printed.
archive::StoredPrint print_for(archive::Archive& archive, archive::DayKey day, ReprintKind kind) {
    auto prints = archive.prints_of(day);
    const auto found = std::ranges::find_if(
        prints, [kind](const archive::StoredPrint& print) { return is_kind(print, kind); });
    if (found != prints.end()) {
        return *found;
    }
    // A day that came from another archive may come without its prints.
    auto print = prints.empty() ? archive::StoredPrint{} : prints.front();
    print.setup.what = kind == ReprintKind::Labels ? "labels" : "cards";
    print.setup.stock.clear();
    print.setup.layout.clear();
    print.setup.look.clear();
    print.setup.files.clear();
    return print;
}

std::vector<Part> parts_of(archive::Archive& archive, const std::vector<archive::Bag>& bags,
                           ReprintKind kind) {
    std::vector<Part> parts;
    std::map<archive::DayKey, std::size_t> by_day;
    for (const auto& bag : bags) {
        const auto [known, is_new] = by_day.emplace(bag.day, parts.size());
        if (is_new) {
            parts.push_back({print_for(archive, bag.day, kind), {}});
            // Of a print of many days this one is enough, and all that a bag's label needs.
            parts.back().print.days = {bag.day};
        }
        parts[known->second].bags.insert(bag.id);
    }
    return parts;
}

std::vector<Part> parts_printed(archive::Archive& archive, kitchen::Date date, ReprintKind kind) {
    std::vector<Part> parts;
    for (auto& print : archive.prints_on(date)) {
        if (is_kind(print, kind)) {
            parts.push_back({std::move(print), {}, true});
        }
    }
    return parts;
}

/// A print of the archive made again.
struct Remade {
    Job job;
    Days days;
    Settings settings;
    PrintOptions options;
};

CardKinds card_kinds(const std::string& what) {
    return what == "finishing cards"  ? CardKinds::Finishing
           : what == "cook-day cards" ? CardKinds::CookDay
                                      : CardKinds::Both;
}

std::optional<Remade> remake(archive::Archive& archive, const archive::StoredPrint& print,
                             const Settings& settings, Console console) {
    auto with = printed_with(print.setup);
    std::vector<DayText> texts;
    for (const auto key : print.days) {
        const auto day = archive.day(key);
        texts.push_back({day.file, day.description});
    }
    Remade remade{{}, read_days(texts, with.settings), with.settings, with.options};
    remade.settings.archive = settings.archive;
    if (has_errors(remade.days.diagnostics)) {
        app::print(console.err, remade.days.diagnostics, remade.days.documents);
        return std::nullopt;
    }
    remade.job = is_labels(print)
                     ? label_job(remade.days, remade.settings)
                     : card_job(remade.days, card_kinds(print.setup.what), remade.settings);
    return remade;
}

/// The prints that are wanted of those fitted: by their bag, or by a bag of their dish where a
/// print serves the whole dish.
void keep_wanted(LaidOut& laid_out, const Remade& remade, const std::set<std::string>& bags) {
    const auto wanted = [&bags](const kitchen::Bag& bag) { return bags.contains(bag.id); };
    std::erase_if(laid_out.fitting.prints, [&](const layout::Fitted& fitted) {
        const auto& of = remade.job.prints[fitted.print];
        const auto& planned = package_of(of, remade.days);
        return of.kind == wording::Kind::CookDayCard ? std::ranges::none_of(planned.bags, wanted)
                                                     : !wanted(planned.bags[of.bag]);
    });
}

void tell_changes(const Part& part, const LaidOut& laid_out, const PrintOptions& options,
                  Console console) {
    if (part.print.setup.look.empty()) {
        return;
    }
    for (const auto& what : changed_files(options.kept)) {
        console.err << fmt::format("note: {} since {}: printed as it was then\n", what,
                                   part.print.first_at.substr(0, 10));
    }
    for (const auto& what : changed_look(part.print.setup.look, look_of(laid_out, options))) {
        console.err << fmt::format("note: {} has changed since {}: this print may look different\n",
                                   what, part.print.first_at.substr(0, 10));
    }
}

/// Labels of a description that was edited since are told of: what they say may be wrong by now.
void tell_revisions(archive::Archive& archive, const Part& part, Console console) {
    for (const auto key : part.print.days) {
        const auto day = archive.day(key);
        const auto newest = archive.revisions(day.lineage).back();
        if (newest.key != key) {
            console.err << fmt::format(
                "caution: the description of {} was edited and printed again on {}: this is the "
                "print of before; name bags or a dish to have what holds now\n",
                kitchen::to_iso(day.made), newest.recorded.substr(0, 10));
        }
    }
}

std::optional<std::vector<Part>> find_parts(archive::Archive& archive,
                                            const ReprintOptions& options, Console console) {
    if (options.printed.empty()) {
        const auto bags = bags_meant(archive, options.bags, console);
        return bags ? std::optional{parts_of(archive, *bags, options.kind)} : std::nullopt;
    }
    const auto date = kitchen::parse_iso(options.printed);
    if (!date) {
        console.err << fmt::format("error: \"{}\" is no date; expected one like 2026-10-17\n",
                                   options.printed);
        return std::nullopt;
    }
    auto parts = parts_printed(archive, *date, options.kind);
    if (parts.empty()) {
        console.err << fmt::format("error: nothing of that kind was printed on {}\n",
                                   options.printed);
        return std::nullopt;
    }
    return parts;
}

PrintOptions options_for(const Part& part, const PrintOptions& printed,
                         const ReprintOptions& wanted) {
    auto options = printed;
    options.output = wanted.output;
    options.stock = wanted.stock.empty() ? printed.stock : wanted.stock;
    if (!wanted.stock.empty()) {
        options.layout.clear();
        options.kept.clear();
    }
    if (!part.whole || wanted.first_cell || !wanted.spoiled.empty()) {
        options.first_cell = wanted.first_cell.value_or(1);
        options.spoiled = wanted.spoiled;
    }
    return options;
}

/// Adds what was fitted for one part to what stands already on the sheets.
bool append(LaidOut& all, LaidOut more) {
    const auto& first = all.setup;
    const bool alike =
        first.own == more.setup.own && first.target.stock.name == more.setup.target.stock.name &&
        std::ranges::equal(
            first.chosen, more.setup.chosen, {}, [](const auto& c) { return c.second.name; },
            [](const auto& c) { return c.second.name; });
    if (alike) {
        std::ranges::move(more.fitting.prints, std::back_inserter(all.fitting.prints));
    }
    return alike;
}

} // namespace

ExitStatus reprint(const ReprintOptions& options, const Settings& settings, Console console) {
    const auto printer = usable_destination(options.output, options.printer, console);
    if (!printer) {
        return printer.fault();
    }
    if (would_overwrite(options.output, {options.stock}, settings, console)) {
        return ExitStatus::Refused;
    }
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive) {
        console.err << "error: nothing has been printed yet\n";
        return ExitStatus::Refused;
    }
    const auto parts = find_parts(*archive, options, console);
    if (!parts) {
        return ExitStatus::Refused;
    }
    std::optional<LaidOut> all;
    Job job;
    for (const auto& part : *parts) {
        const auto remade = remake(*archive, part.print, settings, console);
        if (!remade) {
            return ExitStatus::Refused;
        }
        const auto with = options_for(part, remade->options, options);
        auto laid_out = lay_out(remade->job, remade->days, with, remade->settings, console);
        if (!laid_out) {
            return laid_out.fault();
        }
        auto one = std::move(laid_out).value();
        tell_changes(part, one, with, console);
        tell_revisions(*archive, part, console);
        if (!part.whole) {
            keep_wanted(one, *remade, part.bags);
        }
        if (!all) {
            all = std::move(one);
            job = remade->job;
        } else if (!append(*all, std::move(one))) {
            console.err << "error: these were printed on different stocks or with different "
                           "layouts; nothing written\n"
                           "    hint: name one with --stock, or print them one after the other\n";
            return ExitStatus::Refused;
        }
    }
    place_prints(all->fitting, all->setup.target);
    if (all->fitting.prints.empty()) {
        console.err << "error: there is nothing to print for these bags\n";
        return ExitStatus::Refused;
    }
    if (const auto status = deliver_job(*all, job, options.output, printer.value(), console);
        status != ExitStatus::Done) {
        return status;
    }
    if (options.output != "-") {
        console.out << fmt::format("{}{} on {}; print at 100 %, not \"fit to page\"\n",
                                   options.output.empty() ? "" : options.output + ": ",
                                   counted(all->fitting.prints.size(), job.noun),
                                   all->setup.target.stock.name);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

#include "service/reprint/reprint.h"

#include "base/system_failure.h"
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

std::string day_name_of(const archive::StoredDay& day) {
    return day.file.empty() ? "the description of " + kitchen::to_iso(day.made) : day.file;
}

std::optional<Remade> remake(archive::Archive& archive, const archive::StoredPrint& print,
                             Messages& messages) {
    auto read = printed_with(print.setup);
    if (!read) {
        throw SystemFailure{read.fault()};
    }
    auto with = std::move(read).value();
    std::vector<DayText> texts;
    for (const auto key : print.days) {
        const auto day = archive.day(key);
        if (day.is_rotten) {
            refuse_rotten(day, messages);
            return std::nullopt;
        }
        texts.push_back({day_name_of(day), day.description, day.batches});
    }
    Remade remade{{}, plan_days(texts, with.settings), with.settings, with.look};
    if (has_errors(remade.days.diagnostics)) {
        messages.add(remade.days.diagnostics, remade.days.documents);
        return std::nullopt;
    }
    remade.job = job_of(what_kept_as(print.setup.what), remade.days, remade.settings);
    return remade;
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
/// other bags here, are not, and are named. Of a print of a part, the bags of that part.
std::set<std::string> bags_of_print(archive::Archive& archive, const WantedPrint& wanted,
                                    const Remade& remade, Messages& messages) {
    const auto& days = remade.days;
    const auto& ids = remade.look.part.ids;
    const std::set<std::string> part{ids.begin(), ids.end()};
    std::set<std::string> bags;
    const auto add = [&](const std::string& id, archive::DayKey day, std::size_t place,
                         const std::string& dish) {
        if (!part.empty() && !part.contains(id)) {
            return;
        }
        if (archive.is_of(id, day, place)) {
            bags.insert(id);
            return;
        }
        messages.caution(
            fmt::format("bag {} of \"{}\" is not printed again: it was left out of a merge, or is "
                        "described elsewhere by now, and that id may be on another bag",
                        id, dish));
    };
    for (std::size_t day = 0; day < days.plans.size(); ++day) {
        const auto& packages = days.plans[day].packages;
        for (std::size_t i = 0; i < packages.size(); ++i) {
            for (const auto& bag : packages[i].bags) {
                add(bag.id, wanted.print.days[day], i, packages[i].package.dish);
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
    const bool as_it_was = wanted.whole && is_whole(wanted.part);
    if (!as_it_was || asked.first_cell || !asked.skip.empty()) {
        look.first_cell = asked.first_cell.value_or(1);
        look.skip = asked.skip;
    }
    look.part.copies = asked.copies.value_or(as_it_was ? look.part.copies.value_or(1) : 1);
    return look;
}

/// The bags of a whole print, or of the part of it that is wanted. What is wrong with that part is
/// said in `no_part`, for another print of the day may have it.
std::optional<std::set<std::string>> bags_of_whole(archive::Archive& archive,
                                                   const WantedPrint& wanted, const Remade& remade,
                                                   Messages& messages, Messages& no_part) {
    auto bags = bags_of_print(archive, wanted, remade, messages);
    if (is_whole(wanted.part)) {
        return bags;
    }
    PartSource source;
    source.printed = [&bags] { return bags; };
    auto all = bags_in(remade.days);
    std::erase_if(all, [&bags](const NamedBag& bag) { return !bags.contains(bag.id); });
    auto part = bags_of_part(all, wanted.part, source);
    no_part.add(part.messages);
    return std::move(part.value);
}

/// One print made again, and the bags on it.
struct Again {
    Reprint print;
    std::set<std::string> bags;
    std::string at; ///< when it was last printed
};

/// How prints are to be made again.
struct Asked {
    const ReprintLook& look;
    const Surroundings& around;
    const ChangedFiles& changed_files;
};

/// One print made again; nothing where something stands against it, or where it has no bag of the
/// part that is wanted, which is said in `no_part`.
std::optional<Again> lay_out_again(archive::Archive& archive, const WantedPrint& wanted,
                                   const Asked& asked, Messages& messages, Messages& no_part) {
    auto remade = remake(archive, wanted.print, messages);
    if (!remade) {
        return std::nullopt;
    }
    const auto bags = wanted.whole ? bags_of_whole(archive, wanted, *remade, messages, no_part)
                                   : std::optional{wanted.bags};
    if (!bags || (bags->empty() && !is_whole(wanted.part))) {
        return std::nullopt;
    }
    const auto look = look_for(wanted, remade->look, asked.look);
    remade->job.chosen = {*bags, look.part.copies.value_or(1)};
    if (count_chosen(remade->job, remade->days) == 0) { // finishing cards of a dish without any
        return std::nullopt;
    }
    auto result = lay_out(remade->job, remade->days, look, remade->settings, asked.around);
    messages.add(result.messages);
    if (!result) {
        return std::nullopt;
    }
    note_changes(wanted, *result.value, asked.changed_files(look.kept), messages);
    if (wanted.whole) {
        mind_revisions(archive, wanted, remade->days, *bags, messages);
    }
    mind_gone(archive, wanted, *bags, messages);
    const auto prints = count_chosen(remade->job, remade->days);
    return Again{
        {std::move(*result.value), std::move(remade->job), prints}, *bags, wanted.print.last_at};
}

/// Whether finishing cards stand two to a cell; nothing where there are none.
std::optional<bool> stand_in_halves(const Setup& setup) {
    return setup.chosen.contains(wording::Kind::FinishingCard)
               ? std::optional{setup.medium.stock.halves}
               : std::nullopt;
}

/// Whether two print what both have in the same way: cards of one kind have a layout that those of
/// the other have not.
bool have_same_layouts(const Setup& one, const Setup& other) {
    const auto halves = stand_in_halves(one);
    const auto other_halves = stand_in_halves(other);
    return (!halves || !other_halves || halves == other_halves) &&
           std::ranges::all_of(one.chosen, [&other](const auto& chosen) {
               const auto found = other.chosen.find(chosen.first);
               return found == other.chosen.end() || found->second.name == chosen.second.name;
           });
}

/// Whether they share a stock and layouts, so that they can stand on one sheet.
bool are_alike(const LaidOut& one, const LaidOut& other) {
    return one.setup.own == other.setup.own &&
           one.setup.medium.stock.name == other.setup.medium.stock.name &&
           have_same_layouts(one.setup, other.setup);
}

/// Adds what was fitted for one print to what stands already on the sheets.
/// \returns whether it could; if not, `more` is as it was
bool append(LaidOut& all, LaidOut&& more) {
    const bool alike = are_alike(all, more);
    if (alike) {
        if (const auto halves = stand_in_halves(more.setup)) {
            all.setup.medium.stock.halves = *halves;
        }
        all.setup.chosen.merge(more.setup.chosen);
        std::ranges::move(more.fitting.prints, std::back_inserter(all.fitting.prints));
    }
    return alike;
}

/// That prints cannot stand on the same sheets, and what to do about it.
void refuse_together(const LaidOut& one, const LaidOut& other, Messages& messages) {
    const auto& stock = one.setup.medium.stock.name;
    const auto& other_stock = other.setup.medium.stock.name;
    const auto parted =
        stock == other_stock
            ? fmt::format("on {} with different layouts", stock)
            : fmt::format("on different stocks or with different layouts ({} and {})", stock,
                          other_stock);
    const bool are_cards = !one.setup.chosen.contains(wording::Kind::BagLabel);
    messages.error(
        fmt::format("these were printed {}; nothing written", parted),
        are_cards
            ? std::vector<std::string>{"name one with --stock",
                                       "or print one kind of card after the other, with "
                                       "--finishing and with --cook-day"}
            : std::vector<std::string>{"name one with --stock, or print them one after the other"});
}

/// The kinds of card that a print has, or that it is of labels.
std::vector<What> kinds_of(const Again& again) {
    return again.print.job.what == What::Cards
               ? std::vector{What::FinishingCards, What::CookDayCards}
               : std::vector{again.print.job.what};
}

/// Whether all bags of a print were printed once more, later, on another stock, with cards of this
/// kind where it is of cards: then the first was a mistake, and does not stand in the way of the
/// second.
bool is_replaced(const Again& one, What kind, const Again& later) {
    const auto kinds = kinds_of(later);
    return std::ranges::find(kinds, kind) != kinds.end() &&
           !are_alike(one.print.laid_out, later.print.laid_out) &&
           std::ranges::includes(later.bags, one.bags);
}

/// The later print that replaces one, or of several the last; nullptr where what it has is not all
/// replaced.
const Again* replacement(const std::vector<Again>& parts, std::size_t which) {
    const Again* found = nullptr;
    for (const auto kind : kinds_of(parts[which])) {
        const auto later = std::find_if(
            parts.begin() + static_cast<std::ptrdiff_t>(which) + 1, parts.end(),
            [&](const Again& other) { return is_replaced(parts[which], kind, other); });
        if (later == parts.end()) {
            return nullptr;
        }
        found = &*later;
    }
    return found;
}

void drop_replaced(std::vector<Again>& parts, Messages& messages) {
    for (std::size_t i = 0; i < parts.size();) {
        const auto* later = replacement(parts, i);
        if (later == nullptr) {
            ++i;
            continue;
        }
        messages.note(
            fmt::format("what was printed on {} at {} was printed again on {}: that is made again",
                        parts[i].print.laid_out.setup.medium.stock.name, parts[i].at.substr(11, 5),
                        later->print.laid_out.setup.medium.stock.name));
        parts.erase(parts.begin() + static_cast<std::ptrdiff_t>(i));
    }
}

} // namespace

Outcome<Reprint> reprint(archive::Archive& archive, const std::vector<WantedPrint>& prints,
                         const ReprintLook& asked, const Surroundings& around,
                         const ChangedFiles& changed_files) {
    Outcome<Reprint> outcome;
    std::vector<Again> parts;
    Messages no_part;
    for (const auto& wanted : prints) {
        auto one = lay_out_again(archive, wanted, {asked, around, changed_files}, outcome.messages,
                                 no_part);
        if (!one && outcome.messages.have_errors()) {
            return outcome;
        }
        if (one) { // else no bag of it is wanted
            parts.push_back(std::move(*one));
        }
    }
    drop_replaced(parts, outcome.messages);
    std::optional<Reprint> all;
    for (auto& part : parts) {
        if (!all) {
            all = std::move(part.print);
        } else if (all->prints += part.print.prints;
                   !append(all->laid_out, std::move(part.print.laid_out))) {
            refuse_together(all->laid_out, part.print.laid_out, outcome.messages);
            return outcome;
        }
    }
    if (!all) {
        outcome.messages.add(no_part);
        if (!no_part.have_errors()) {
            outcome.messages.error("there is nothing to print for these bags");
        }
        return outcome;
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

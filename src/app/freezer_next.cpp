#include "service/freezer/freezer_next.h"

#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/bag_text.h"
#include "app/clock.h"
#include "app/guest_text.h"
#include "app/station.h"
#include "base/counted.h"
#include "base/list.h"
#include "json/answers.h"
#include "wording/phrases.h"
#include "wording/timeline_words.h"

#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

using service::Menu;
using service::Proposal;

const wording::Language& language() {
    return wording::shipped_language("en");
}

std::string moment(kitchen::LocalMinute local) {
    return say_weekday_date(local, language()) + ", " + say_time_of_day(local, language());
}

/// " (look from 36 h, allow 72 h)", as the label has it.
std::string allow_text(const kitchen::TimeRange& time) {
    const auto look = time.low < time.high
                          ? fmt::format("look from {}, ", say_lead(time.low, language()))
                          : std::string{};
    return fmt::format(" ({}allow {})", look, say_lead(time.high, language()));
}

std::string thaw_text(const Proposal& proposal) {
    if (proposal.way && proposal.way->served == kitchen::Served::Frozen) {
        return "eaten frozen: do not thaw";
    }
    if (!proposal.method ||
        (*proposal.method != kitchen::ThawMethod::FromFrozen && !proposal.thaw_start)) {
        return "thaw as the label says";
    }
    const auto start = proposal.thaw_start ? moment(*proposal.thaw_start) : std::string{};
    const auto allow = proposal.thaw_time ? allow_text(*proposal.thaw_time) : std::string{};
    switch (*proposal.method) {
    case kitchen::ThawMethod::Refrigerator:
        return fmt::format("into the refrigerator: {}{}{}", start, allow,
                           proposal.cook_within
                               ? fmt::format("; cook within {} of being thawed",
                                             say_days(*proposal.cook_within, language()))
                               : "");
    case kitchen::ThawMethod::ColdWater:
        return fmt::format(
            "into cold water, at most 21 °C (70 °F), the bag sealed and the water changed "
            "every 30 min: {}{}; then cook at once",
            start, allow);
    case kitchen::ThawMethod::Microwave:
        return fmt::format("into the microwave: {}{}; then cook at once", start, allow);
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "cooked from frozen: do not thaw";
}

std::string ids_of(const Proposal& proposal) {
    return (proposal.bags.size() == 1 ? "bag " : "bags ") +
           joined(proposal.bags, ", ", [](const archive::Bag& bag) {
               return bag.id + (bag.place.empty() ? "" : " (" + bag.place + ")");
           });
}

void show(const Proposal& proposal, std::ostream& out) {
    const auto& first = proposal.bags.front();
    out << fmt::format(
        "{}  {}, {}, serves {}, {} {}{}\n    {}\n", moment(proposal.eat), dish_text(first),
        ids_of(proposal), proposal.servings(), date_head(first), kitchen::to_iso(first.keep_until),
        first.keep_until < kitchen::Date{std::chrono::floor<std::chrono::days>(proposal.eat)}
            ? " (past)"
            : "",
        thaw_text(proposal));
}

/// "RAW · Pork shoulder (use by 2026-11-20)"
std::string dated_dish(const archive::Bag& bag) {
    return fmt::format("{} ({} {})", dish_text(bag), date_head(bag),
                       kitchen::to_iso(bag.keep_until));
}

/// What is not proposed, and why.
void show_rest(const Menu& menu, std::ostream& out) {
    for (const auto eat : menu.without) {
        out << fmt::format("nothing can be thawed as its label says by {}; thawslip plan "
                           "names faster ways\n",
                           moment(eat));
    }
    for (const auto& meal : menu.after_date) {
        out << fmt::format("not proposed for {}, whose day comes after the date on the label: {}\n",
                           moment(meal.eat), joined(meal.bags, "; ", dated_dish));
    }
    if (menu.days_left > 0) {
        out << fmt::format("{} more: every dish that serves {} was proposed once\n",
                           counted(menu.days_left, "day"), menu.serves);
    }
    if (menu.too_many > 0) {
        out << fmt::format("{} cannot be eaten in these days before the date on the label\n",
                           counted(menu.too_many, "bag"));
    }
    if (!menu.small.empty()) {
        out << fmt::format("not proposed, small portions: {}\n", fmt::join(menu.small, "; "));
    }
    if (!menu.too_few.empty()) {
        out << fmt::format("not proposed, all bags together do not serve {}: {}\n", menu.serves,
                           fmt::join(menu.too_few, "; "));
    }
    if (!menu.avoided.empty()) {
        out << fmt::format(
            "not proposed, for what the guest may not eat is named there, or what is "
            "in it is not known: {}\n",
            fmt::join(menu.avoided, "; "));
    }
    if (menu.past > 0) {
        out << fmt::format(
            "not proposed: {} past the date on the label, see thawslip freezer list; "
            "--past proposes those past a best-by date\n",
            counted(menu.past, "bag"));
    }
}

void show(const Menu& menu, const std::vector<service::Avoided>& without, std::ostream& out) {
    for (const auto& proposal : menu.proposals) {
        show(proposal, out);
    }
    const bool empty = menu.proposals.empty() && menu.past == 0 && menu.without.empty() &&
                       menu.after_date.empty() && menu.small.empty() && menu.too_few.empty() &&
                       menu.avoided.empty();
    if (empty) {
        out << "the freezer is empty, as far as the archive knows\n";
    }
    show_rest(menu, out);
    if (menu.proposals.empty()) {
        return;
    }
    if (without.empty()) {
        out << language().say("standing.local-rules") << "\n";
    } else {
        out << no_promise_to_guests;
    }
}

Menu menu_of(archive::Archive& archive, const service::NextQuestion& question,
             const Settings& settings) {
    return service::freezer_next(archive, question, now_here(), settings.kitchen.thaw);
}

} // namespace

ExitStatus freezer_next(const FreezerNextOptions& options, AnswerAs answer,
                        const Settings& settings, Console console) {
    auto avoided = avoided_of(options.without, console);
    if (!avoided) {
        return ExitStatus::Usage;
    }
    auto question = options.question;
    question.without = std::move(*avoided);
    auto archive = existing_archive(settings, archive::Mode::Read);
    const auto menu = archive ? menu_of(*archive, question, settings) : Menu{};
    if (answer == AnswerAs::Json) {
        console.out << json::next(menu.proposals);
    } else if (!archive) {
        console.out << no_archive_text(settings) << "\n";
    } else {
        show(menu, question.without, console.out);
    }
    return ExitStatus::Done;
}

} // namespace thawslip::app

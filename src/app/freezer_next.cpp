#include "app/archive_bags.h"
#include "app/archive_commands.h"
#include "app/archive_place.h"
#include "app/clock.h"
#include "app/counted.h"
#include "app/figures_json.h"
#include "app/json.h"
#include "app/timeline_dish.h"
#include "kitchen/figures.h"
#include "wording/phrases.h"
#include "wording/timeline_words.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

const wording::Language& language() {
    return wording::shipped_language("en");
}

/// A bag and the day it is to be eaten.
struct Proposal {
    kitchen::LocalMinute eat;
    archive::Bag bag;
    std::optional<kitchen::ThawMethod> method;      ///< nothing: the label knows
    std::optional<kitchen::LocalMinute> thaw_start; ///< nothing: it does not thaw, or not known
    std::optional<kitchen::TimeRange> thaw_time{};
    std::optional<std::chrono::days> cook_within{};
};

/// What is proposed, and what is not.
struct Menu {
    std::vector<Proposal> proposals;
    std::vector<kitchen::LocalMinute> without; ///< meals that nothing can be thawed for
    int past = 0;                              ///< bags past the date on their label
    int too_many = 0;                          ///< bags whose date comes before their turn
};

kitchen::LocalMinute meal_on(kitchen::Date day, std::chrono::minutes time) {
    return kitchen::LocalMinute{std::chrono::sys_days{day}.time_since_epoch() + time};
}

/// Whether a plan is one to follow: thawed as the label says and begun in time.
bool is_in_time(const kitchen::Timeline& line) {
    return can_be_done(line) &&
           std::ranges::find(line.remarks, kitchen::RemarkId::ThawTooLate,
                             &kitchen::TimelineRemark::id) == line.remarks.end();
}

/// Chooses a bag for each of the coming days.
class Proposing {
public:
    Proposing(archive::Archive& archive, const NextQuestion& question, const Settings& settings)
        : question_{question}, settings_{settings}, now_{now()},
          clock_{system_clock(now_ - std::chrono::days{30}, now_ + std::chrono::days{400})},
          packages_{archive} {
        for (auto& bag : archive.bags(archive::Which::InFreezer)) {
            if (bag.keep_until < today()) {
                ++menu_.past;
            } else {
                bags_.push_back(std::move(bag));
            }
        }
    }

    Menu run() {
        for (int day = 1; day <= question_.count && !bags_.empty(); ++day) {
            const auto date = kitchen::add_days(today(), std::chrono::days{day});
            menu_.too_many += static_cast<int>(std::erase_if(
                bags_, [date](const archive::Bag& bag) { return bag.keep_until < date; }));
            choose(meal_on(date, question_.at));
        }
        return std::move(menu_);
    }

private:
    /// The bag with the soonest date that can be thawed in time.
    void choose(kitchen::LocalMinute eat) {
        if (bags_.empty()) {
            return;
        }
        std::optional<kitchen::Date> tried_date;
        std::string tried_dish;
        for (auto bag = bags_.begin(); bag != bags_.end(); ++bag) {
            if (bag->made == tried_date && bag->dish == tried_dish) {
                continue; // bags of one dish thaw alike
            }
            tried_date = bag->made;
            tried_dish = bag->dish;
            if (auto proposal = propose(*bag, eat)) {
                menu_.proposals.push_back(std::move(*proposal));
                bags_.erase(bag);
                return;
            }
        }
        menu_.without.push_back(eat);
    }

    std::optional<Proposal> propose(const archive::Bag& bag, kitchen::LocalMinute eat) {
        const auto* package = packages_.of(bag);
        if (package == nullptr) {
            return Proposal{eat, bag, std::nullopt, std::nullopt};
        }
        const auto line = kitchen::timeline(
            {{timeline_dish(*package)}, eat, now_, clock_, settings_.kitchen.thaw});
        if (!is_in_time(line)) {
            return std::nullopt;
        }
        Proposal proposal{eat,
                          bag,
                          package->package.thaw.method,
                          std::nullopt,
                          thaw_time(*package),
                          cook_within(*package)};
        if (const auto& thaw = line.dishes.front().thaw) {
            proposal.thaw_start = on_clock(clock_, thaw->at);
        }
        return proposal;
    }

    const NextQuestion& question_;
    const Settings& settings_;
    kitchen::Instant now_;
    kitchen::LocalClock clock_;
    std::vector<archive::Bag> bags_; ///< that are left, the soonest date first
    PackagesOfBags packages_;
    Menu menu_;
};

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
        return fmt::format("into {}: {}{}; then cook at once",
                           language().say("door-list.cold-water"), start, allow);
    case kitchen::ThawMethod::Microwave:
        return fmt::format("into the microwave: {}{}; then cook at once", start, allow);
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "cooked from frozen: do not thaw";
}

void tell(const Menu& menu, Console console) {
    for (const auto& proposal : menu.proposals) {
        const auto& [eat, bag, method, thaw_start, thaw_time, cook_within] = proposal;
        console.out << fmt::format("{}  {}, bag {}, serves {}, {} {}\n    {}\n", moment(eat),
                                   dish_text(bag), bag.id, bag.servings, date_head(bag),
                                   kitchen::to_iso(bag.keep_until), thaw_text(proposal));
    }
    if (menu.proposals.empty() && menu.past == 0 && menu.without.empty()) {
        console.out << "the freezer is empty, as far as the archive knows\n";
    }
    for (const auto eat : menu.without) {
        console.out << fmt::format("nothing can be thawed as its label says by {}; thawslip plan "
                                   "names faster ways\n",
                                   moment(eat));
    }
    if (menu.too_many > 0) {
        console.out << fmt::format("{} cannot be eaten one a day before the date on the label\n",
                                   counted(menu.too_many, "bag"));
    }
    if (menu.past > 0) {
        console.out << fmt::format("not proposed: {} past the date on the label, see thawslip "
                                   "freezer list\n",
                                   counted(menu.past, "bag"));
    }
    if (!menu.proposals.empty()) {
        console.out << language().say("standing.local-rules") << "\n";
    }
}

void tell_json(const Menu& menu, Console console) {
    std::vector<std::string> values;
    for (const auto& [eat, bag, method, thaw_start, thaw_time, cook_within] : menu.proposals) {
        values.push_back(fmt::format(
            R"({{"eat": "{}", "thaw_start": {}, "thaw": {}, "id": {}, "dish": {}, )"
            R"("raw": {}, "servings": {}, "use_by": "{}"{}}})",
            kitchen::to_iso(eat), thaw_start ? json_string(kitchen::to_iso(*thaw_start)) : "null",
            method ? json_string(archive::word_of(*method)) : "null", json_string(bag.id),
            json_string(bag.dish), is_raw(bag), bag.servings, kitchen::to_iso(bag.keep_until),
            thaw_members(thaw_time, cook_within)));
    }
    console.out << json_lines(values);
}

} // namespace

ExitStatus freezer_next(const NextQuestion& question, const Settings& settings, Console console) {
    auto archive = existing_archive(settings, archive::Mode::Read);
    if (!archive && question.answer == AnswerAs::Words) {
        console.out << no_archive_text(settings) << "\n";
        return ExitStatus::Done;
    }
    const auto menu = archive ? Proposing{*archive, question, settings}.run() : Menu{};
    question.answer == AnswerAs::Json ? tell_json(menu, console) : tell(menu, console);
    return ExitStatus::Done;
}

} // namespace thawslip::app

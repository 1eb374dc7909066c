#include "app/archive_bags.h"
#include "app/clock.h"
#include "app/commands.h"
#include "app/day_files.h"
#include "app/json.h"
#include "app/output_guard.h"
#include "app/report.h"
#include "app/timeline_dish.h"
#include "app/whole_file.h"
#include "base/nearest.h"
#include "kitchen/texts/text.h"
#include "kitchen/timeline/calendar.h"
#include "kitchen/timeline/timeline.h"
#include "wording/timeline_words.h"

#include <algorithm>
#include <fmt/format.h>
#include <ostream>

namespace thawslip::app {
namespace {

/// A timeline with the words for each of its events.
struct Planned {
    std::vector<kitchen::TimelineDish> dishes;
    kitchen::Timeline line;
    std::vector<kitchen::EventWords> words;
    kitchen::Instant now;
    wording::Style style;
};

/// Whether each of `words` begins a word of the dish, as in `freezer find`.
bool is_meant(const std::string& dish, const std::string& words) {
    const auto in_dish = kitchen::words_of(dish);
    return std::ranges::all_of(kitchen::words_of(words), [&](const std::string& word) {
        return std::ranges::any_of(
            in_dish, [&](const std::string& whole) { return whole.starts_with(word); });
    });
}

using Packages = std::vector<kitchen::PlannedPackage>;

/// The packages of the days; what is wrong with a description is said, and then there are none.
std::optional<Packages> packages_of_days(const PlanOptions& options, const Settings& settings,
                                         Console console) {
    const auto days = read_days(options.days, settings);
    print(console.err, days.diagnostics, days.documents);
    if (has_errors(days.diagnostics)) {
        return std::nullopt;
    }
    Packages packages;
    for (const auto& plan : days.plans) {
        for (auto planned : plan.packages) {
            std::erase_if(planned.bags,
                          [&](const kitchen::Bag& bag) { return bag.number > options.bags; });
            packages.push_back(std::move(planned));
        }
    }
    return packages;
}

kitchen::Date day_of(kitchen::LocalMinute local) {
    return kitchen::Date{std::chrono::floor<std::chrono::days>(local)};
}

/// What may be planned: of days, or of the archive's bags where no file is named.
std::optional<Packages> packages_for(const PlanOptions& options, kitchen::LocalMinute eat,
                                     const Settings& settings, Console console) {
    return mean_bags(options.days)
               ? packages_meant({options.days, options.bags, day_of(eat)}, settings, console)
               : packages_of_days(options, settings, console);
}

std::vector<kitchen::TimelineDish> dishes_of(const Packages& packages, const std::string& words) {
    std::vector<kitchen::TimelineDish> dishes;
    for (const auto& planned : packages) {
        if (is_meant(planned.package.dish, words)) {
            dishes.push_back(timeline_dish(planned));
        }
    }
    return dishes;
}

ExitStatus no_such_dish(const Packages& packages, const std::string& words, std::ostream& err) {
    std::vector<std::string> names;
    for (const auto& planned : packages) {
        names.push_back(planned.package.dish);
    }
    const auto near = nearest(words, names);
    err << fmt::format("error: no dish has the words \"{}\"\n    hint: {}\n", words,
                       near ? fmt::format("did you mean \"{}\"?", *near)
                            : "the dishes are " + list_of(names));
    return ExitStatus::Refused;
}

/// Reads one of the two times; says what is wrong with it.
std::optional<kitchen::LocalMinute> read_time(const std::string& text, std::string_view option,
                                              std::ostream& err) {
    const auto time = kitchen::parse_local_minute(text);
    if (!time) {
        err << fmt::format("error: {} \"{}\" is not a date and time; expected one such as "
                           "\"2026-12-03 18:30\"\n",
                           option, text);
    }
    return time;
}

/// A local time read without knowing its zone: at most a day off.
kitchen::Instant roughly(kitchen::LocalMinute local) {
    return kitchen::Instant{local.time_since_epoch()};
}

/// The clock around the time to eat: thawing starts at most some weeks before.
kitchen::LocalClock clock_around(kitchen::LocalMinute eat, kitchen::Instant now) {
    constexpr std::chrono::days before{60};
    constexpr std::chrono::days after{30};
    return system_clock(std::min(roughly(eat), now) - before, std::max(roughly(eat), now) + after);
}

Planned plan_for(std::vector<kitchen::TimelineDish> dishes, kitchen::LocalMinute eat,
                 std::optional<kitchen::LocalMinute> as_if, const Settings& settings) {
    Planned planned{{}, {}, {}, {}, style_of(settings)};
    planned.dishes = std::move(dishes);
    planned.now = now();
    auto clock = clock_around(eat, as_if ? roughly(*as_if) : planned.now);
    if (as_if) {
        planned.now = read_clock(clock, *as_if).instant;
    }
    planned.line = kitchen::timeline(
        {planned.dishes, eat, planned.now, std::move(clock), settings.kitchen.thaw});
    for (const auto& event : planned.line.events) {
        planned.words.push_back(say_event(planned.line, planned.dishes, event, planned.style));
    }
    return planned;
}

std::string_view key(kitchen::TimelineStep step) {
    switch (step) {
    case kitchen::TimelineStep::Thaw: return "thaw";
    case kitchen::TimelineStep::Look: return "look";
    case kitchen::TimelineStep::Start: return "start";
    case kitchen::TimelineStep::Add: return "add";
    case kitchen::TimelineStep::Ready: break;
    }
    return "ready";
}

std::string_view key(kitchen::RemarkWeight weight) {
    switch (weight) {
    case kitchen::RemarkWeight::Note: return "note";
    case kitchen::RemarkWeight::Caution: return "caution";
    case kitchen::RemarkWeight::CannotBeDone: break;
    }
    return "cannot be done";
}

/// "Squash and red lentil stew: …", with the ingredient where it is about one.
std::string remark_text(const Planned& planned, const kitchen::TimelineRemark& remark) {
    auto text = say_remark(planned.line, remark, planned.style.language);
    if (!remark.dish) {
        return text;
    }
    const auto& package = planned.dishes[*remark.dish].package;
    const auto what =
        remark.finish ? ", " + package.finish[*remark.finish].add.as_written : std::string{};
    return fmt::format("{}{}: {}", package.dish, what, text);
}

void tell_events(const Planned& planned, std::ostream& out) {
    std::string day;
    for (std::size_t i = 0; i < planned.line.events.size(); ++i) {
        const auto local = on_clock(planned.line.clock, planned.line.events[i].at);
        if (auto today = say_weekday_date(local, planned.style.language); today != day) {
            out << (day.empty() ? "" : "\n") << today << "\n";
            day = std::move(today);
        }
        out << fmt::format("  {}  {}\n", say_time_of_day(local, planned.style.language),
                           planned.words[i].summary);
        if (!planned.words[i].description.empty()) {
            out << fmt::format("         {}\n", planned.words[i].description);
        }
    }
}

using kitchen::RemarkId;

/// Where a dish is late, these are said before all else: what can still be done, and then what no
/// longer can.
constexpr RemarkId of_late_dishes[] = {RemarkId::ThawOnRack,      RemarkId::ThawByWater,
                                       RemarkId::ThawByMicrowave, RemarkId::CookFromFrozen,
                                       RemarkId::IfThawed,        RemarkId::IfThawedAt,
                                       RemarkId::NoWayInTime,     RemarkId::StartTooLate,
                                       RemarkId::ThawTooLate,     RemarkId::FrozenStartTooLate};

bool is_of_late_dish(const kitchen::TimelineRemark& remark) {
    return remark.dish && std::ranges::find(of_late_dishes, remark.id) != std::end(of_late_dishes);
}

std::string say(const Planned& planned, const kitchen::TimelineRemark& remark) {
    return say_remark(planned.line, remark, planned.style.language);
}

/// A way with what to mind on it, in one line.
std::string way_text(const Planned& planned, const kitchen::FasterWay& way, std::size_t dish) {
    auto text = say(planned, remark_of(way, dish));
    for (const auto& caution : cautions_of(way.method, dish)) {
        text += " " + say(planned, caution);
    }
    return text;
}

const kitchen::TimelineRemark* find_remark(const Planned& planned, RemarkId id, std::size_t dish) {
    const auto found = std::ranges::find_if(planned.line.remarks, [&](const auto& remark) {
        return remark.id == id && remark.dish == dish;
    });
    return found == planned.line.remarks.end() ? nullptr : &*found;
}

void tell_late_dish(const Planned& planned, std::size_t dish, std::ostream& out) {
    const auto& ways = planned.line.dishes[dish].ways;
    out << planned.style.say(ways.empty() ? "plan.late-no-way" : "plan.late",
                             {planned.dishes[dish].package.dish})
        << "\n";
    int number = 0;
    for (const auto& way : ways) {
        out << fmt::format("  {}. {}\n", ++number, way_text(planned, way, dish));
    }
    for (const auto id : {RemarkId::IfThawed, RemarkId::IfThawedAt, RemarkId::NoWayInTime,
                          RemarkId::StartTooLate, RemarkId::FrozenStartTooLate}) {
        if (const auto* remark = find_remark(planned, id, dish)) {
            out << "  " << say(planned, *remark) << "\n";
        }
    }
    if (const auto* remark = find_remark(planned, RemarkId::ThawTooLate, dish)) {
        out << "  " << planned.style.say("plan.no-longer", {say(planned, *remark)}) << "\n";
    }
    out << "\n";
}

void tell_late_dishes(const Planned& planned, std::ostream& out) {
    for (std::size_t dish = 0; dish < planned.dishes.size(); ++dish) {
        const auto is_about = [&](const kitchen::TimelineRemark& remark) {
            return remark.dish == dish && is_of_late_dish(remark);
        };
        if (std::ranges::any_of(planned.line.remarks, is_about)) {
            tell_late_dish(planned, dish, out);
        }
    }
}

void tell_remarks(const Planned& planned, std::ostream& out) {
    bool any = false;
    for (const auto& remark : planned.line.remarks) {
        if (is_of_late_dish(remark)) {
            continue;
        }
        out << fmt::format("{}{}: {}\n", any || planned.line.events.empty() ? "" : "\n",
                           key(rule_of(remark.id).weight), remark_text(planned, remark));
        any = true;
    }
}

void tell(const Planned& planned, std::ostream& out) {
    tell_late_dishes(planned, out);
    tell_events(planned, out);
    tell_remarks(planned, out);
    out << "\n" << planned.style.language.say("standing.local-rules") << "\n";
}

std::string event_json(const Planned& planned, std::size_t i) {
    const auto& event = planned.line.events[i];
    const auto& dish = planned.dishes[event.dish];
    const auto& words = planned.words[i];
    const auto text =
        words.description.empty() ? words.summary : words.summary + ". " + words.description;
    return fmt::format(R"({{"at":{},"what":{},"dish":{},"bags":{},"text":{}}})",
                       json_string(kitchen::to_iso(on_clock(planned.line.clock, event.at))),
                       json_string(key(event.what)), json_string(dish.package.dish),
                       json_strings(dish.bags), json_string(text));
}

std::string remark_json(const Planned& planned, const kitchen::TimelineRemark& remark) {
    const auto& rule = rule_of(remark.id);
    const auto dish = remark.dish ? json_string(planned.dishes[*remark.dish].package.dish) : "null";
    return fmt::format(R"({{"id":{},"severity":{},"dish":{},"text":{}}})", json_string(rule.key),
                       json_string(key(rule.weight)), dish,
                       json_string(say_remark(planned.line, remark, planned.style.language)));
}

std::string_view key(kitchen::ThawMethod method) {
    switch (method) {
    case kitchen::ThawMethod::Refrigerator: return "refrigerator";
    case kitchen::ThawMethod::ColdWater: return "cold water";
    case kitchen::ThawMethod::Microwave: return "microwave";
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "from frozen";
}

std::string way_json(const Planned& planned, const kitchen::FasterWay& way, std::size_t dish) {
    const auto at = [&](kitchen::Instant instant) {
        return json_string(kitchen::to_iso(on_clock(planned.line.clock, instant)));
    };
    std::vector<std::string> cautions;
    for (const auto& caution : cautions_of(way.method, dish)) {
        cautions.push_back(say(planned, caution));
    }
    return fmt::format(
        R"({{"dish":{},"method":{},"begin":{},"start":{},"ready":{},"text":{},"cautions":{}}})",
        json_string(planned.dishes[dish].package.dish), json_string(key(way.method)), at(way.begin),
        at(way.start), at(planned.line.eat), json_string(say(planned, remark_of(way, dish))),
        json_strings(cautions));
}

void tell_json(const Planned& planned, std::ostream& out) {
    std::vector<std::string> ways;
    for (std::size_t dish = 0; dish < planned.dishes.size(); ++dish) {
        for (const auto& way : planned.line.dishes[dish].ways) {
            ways.push_back(way_json(planned, way, dish));
        }
    }
    std::vector<std::string> events;
    for (std::size_t i = 0; i < planned.line.events.size(); ++i) {
        events.push_back(event_json(planned, i));
    }
    std::vector<std::string> remarks;
    for (const auto& remark : planned.line.remarks) {
        remarks.push_back(remark_json(planned, remark));
    }
    out << fmt::format("{{\"eat\":{},\"ways\":{},\"events\":{},\"remarks\":{}}}\n",
                       json_string(kitchen::to_iso(on_clock(planned.line.clock, planned.line.eat))),
                       json_list(ways), json_list(events), json_list(remarks));
}

/// Writes what can still be done; a dish that cannot is named, for it is missed in a calendar.
void write_calendar(const Planned& planned, const std::string& file, Console console) {
    if (file.empty()) {
        return;
    }
    const auto text = calendar_text(planned.line, planned.dishes, planned.words, {planned.now});
    if (text.empty()) {
        console.err << "error: this cannot be done in time, so no calendar is written\n";
        return;
    }
    for (std::size_t dish = 0; dish < planned.dishes.size(); ++dish) {
        const auto outlook = planned.line.dishes[dish].outlook;
        if (outlook == kitchen::Outlook::OnlyIfThawed || outlook == kitchen::Outlook::TooLate) {
            console.err << fmt::format("caution: {} cannot be done in time and is left out of the "
                                       "calendar\n",
                                       planned.dishes[dish].package.dish);
        }
    }
    write_whole_file(file, text);
}

} // namespace

ExitStatus plan(const PlanOptions& options, const Settings& settings, Console console) {
    const auto eat = read_time(options.eat, "--eat", console.err);
    const auto as_if = options.now.empty() ? std::optional<kitchen::LocalMinute>{}
                                           : read_time(options.now, "--now", console.err);
    if (!eat || (!as_if && !options.now.empty())) {
        return ExitStatus::Usage;
    }
    if (const auto refused =
            refuse_output({options.calendar, {".ics"}, options.days}, settings, console)) {
        return *refused;
    }
    const auto packages = packages_for(options, *eat, settings, console);
    if (!packages) {
        return ExitStatus::Refused;
    }
    auto dishes = dishes_of(*packages, options.dish);
    if (dishes.empty()) {
        return no_such_dish(*packages, options.dish, console.err);
    }
    const auto planned = plan_for(std::move(dishes), *eat, as_if, settings);
    if (options.answer == AnswerAs::Json) {
        tell_json(planned, console.out);
    } else {
        tell(planned, console.out);
    }
    write_calendar(planned, options.calendar, console);
    return can_be_done(planned.line) ? ExitStatus::Done : ExitStatus::Refused;
}

} // namespace thawslip::app

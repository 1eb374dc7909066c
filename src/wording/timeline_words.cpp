#include "wording/timeline_words.h"

#include "base/list.h"
#include "kitchen/cautions/cautions.h"
#include "kitchen/cooking/thaw_pairing.h"
#include "kitchen/timeline/cook_window.h"
#include "wording/fields.h"
#include "wording/freezing_plan.h"
#include "wording/phrases.h"
#include "wording/print.h"
#include "wording/typography.h"

#include <fmt/format.h>

namespace thawslip::wording {
namespace {

using kitchen::Instant;
using kitchen::TimelineEvent;
using kitchen::TimelineStep;

/// The parts of a local time, ready for the calendar's words.
struct LocalParts {
    kitchen::Date date;
    unsigned weekday = 0; ///< 1 for Monday to 7 for Sunday (ISO 8601)
    std::chrono::minutes of_day{0};
};

LocalParts parts_of(kitchen::LocalMinute local) {
    const auto day = std::chrono::floor<std::chrono::days>(local);
    return {kitchen::Date{day}, std::chrono::weekday{day}.iso_encoding(), local - day};
}

/// What stands around one event: whose it is and when that dish is thawed and cooked.
struct Setting {
    const kitchen::Timeline& line;
    std::span<const kitchen::TimelineDish> dishes;
    const kitchen::TimelineDish& dish;
    const kitchen::DishTimeline& windows;
    const Style& style;
    std::size_t number = 0; ///< of the dish
    DishNamed named = DishNamed::InSentence;
    Instant at = {}; ///< of the event
};

/// What the clock shows; where the day of the event stands, without the same day.
std::string clock_at(const Setting& setting, Instant instant) {
    const auto local = on_clock(setting.line.clock, instant);
    const auto event = on_clock(setting.line.clock, setting.at);
    const bool day_is_said =
        setting.named != DishNamed::InSentence && parts_of(local).date == parts_of(event).date;
    const auto& language = setting.style.language;
    return day_is_said ? say_time_of_day(local, language) : say_clock(local, language);
}

/// A sentence with the two ends of a window: both with their days, or neither.
std::string say_window(const Setting& setting, std::string_view key, Instant from, Instant to) {
    const auto day = [&setting](Instant instant) {
        return parts_of(on_clock(setting.line.clock, instant)).date;
    };
    const auto& language = setting.style.language;
    if (day(from) == day(to)) {
        return language.say(key, {clock_at(setting, from), clock_at(setting, to)});
    }
    const auto clock = [&](Instant instant) {
        return say_clock(on_clock(setting.line.clock, instant), language);
    };
    return language.say(key, {clock(from), clock(to)});
}

std::string dish_of(const Setting& setting) {
    return say_sized_dish(setting.dish.package, setting.dish.raw, setting.style);
}

std::string bags_of(const Setting& setting) {
    const auto count = setting.dish.bags.size();
    if (setting.named == DishNamed::ByLane) {
        return with_no_break_spaces(say_bag_count(count, setting.style));
    }
    return setting.style.language.say(count == 1 ? "plan.bag" : "plan.bags",
                                      {std::to_string(count), dish_of(setting)});
}

std::string_view thaw_key(kitchen::ThawMethod method) {
    switch (method) {
    case kitchen::ThawMethod::Refrigerator: return "plan.thaw-refrigerator";
    case kitchen::ThawMethod::ColdWater: return "plan.thaw-cold-water";
    case kitchen::ThawMethod::Microwave: return "plan.thaw-microwave";
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "plan.thaw-refrigerator";
}

/// How it is thawed: as planned, or by the first of the ways that are left.
kitchen::ThawMethod method_of(const Setting& setting) {
    return setting.windows.ways.empty() ? setting.dish.package.thaw.method
                                        : setting.windows.ways.front().method;
}

void add_sentence(std::string& text, std::string_view sentence) {
    text += text.empty() ? "" : text.ends_with('.') ? " " : ". ";
    text += sentence;
}

/// What to mind on the way to the table: it has to be where the alarm rings.
void add_cautions(std::string& text, const Setting& setting) {
    for (const auto& caution : cautions_of(method_of(setting), 0)) {
        add_sentence(text, say_remark(setting.line, setting.dishes, caution, setting.style));
    }
}

/// Said when it is ready: that is when somebody has the thermometer in it.
bool is_of_hold(const kitchen::Caution& caution) {
    return caution.id == "hold" || caution.id == "hold-briefly";
}

/// The label's cautions for whoever thaws it, or for whoever cooks it.
enum class CautionFor { Thawing, Cooking };

/// A caution of the label as it is said of the way that is left.
std::string say_for_way(const Setting& setting, const kitchen::Caution& caution) {
    const auto& language = setting.style.language;
    const bool fast =
        !setting.windows.ways.empty() && method_of(setting) != kitchen::ThawMethod::Refrigerator;
    return fast && caution.id == "infant-food" ? language.say("caution.infant-food-at-once")
                                               : say_caution(caution, language);
}

/// When a vacuum pack is opened, as it holds for the way that is left: in water it stays sealed.
void add_pack_cautions(std::string& text, const Setting& setting) {
    constexpr std::string_view in_water = "-in-water";
    for (const auto& caution : setting.dish.cautions) {
        if (!caution.id.starts_with("vacuum-packed")) {
            continue;
        }
        auto id = caution.id.substr(0, caution.id.find(in_water));
        id += method_of(setting) == kitchen::ThawMethod::ColdWater ? in_water : "";
        add_sentence(text, setting.style.language.say("caution." + id));
    }
}

/// What food that was thawed fast needs of its vessel.
void add_passage(std::string& text, const Setting& setting) {
    const auto heat = kitchen::heat_of(setting.dish.package);
    const auto passage = kitchen::pairing(method_of(setting), heat).passage;
    const auto& language = setting.style.language;
    if (passage == kitchen::Passage::AtOnceHigh) {
        add_sentence(text, language.say("caution.slow-cooker-from-water"));
    } else if (passage == kitchen::Passage::AtOnceHot) {
        add_sentence(text, language.say("caution.low-heat-from-water"));
    }
}

/// What an event adds or starts beside the dish; nothing for the others.
const KeyPath* added_by(const Setting& setting, const kitchen::TimelineEvent& event) {
    const auto& package = setting.dish.package;
    return event.finish ? &package.finish[*event.finish].where
           : event.side ? &package.sides[*event.side].where
                        : nullptr;
}

/// Whether a caution stands where what it speaks of is added, and so not where cooking starts.
bool is_said_when_added(const Setting& setting, const kitchen::Caution& caution) {
    return std::ranges::any_of(setting.line.events, [&](const kitchen::TimelineEvent& event) {
        const auto* added = event.dish == setting.number ? added_by(setting, event) : nullptr;
        return added != nullptr && added->leads_to(caution.where);
    });
}

void add_cautions_of(std::string& text, const Setting& setting, const KeyPath& added) {
    for (const auto& caution : setting.dish.cautions) {
        if (added.leads_to(caution.where)) {
            add_sentence(text, say_caution(caution, setting.style.language));
        }
    }
}

void add_label_cautions(std::string& text, const Setting& setting, CautionFor whom) {
    for (const auto& caution : setting.dish.cautions) {
        const bool of_thawing = kitchen::is_of_thawing(caution);
        if (of_thawing == (whom == CautionFor::Thawing) && !thaw_line_says(caution) &&
            !is_of_hold(caution) && !is_said_when_added(setting, caution)) {
            add_sentence(text, say_for_way(setting, caution));
        }
    }
}

/// How long it thaws and keeps, in the label's own words.
std::string label_thaw_line(const Setting& setting) {
    kitchen::PlannedPackage planned;
    planned.package = setting.dish.package;
    planned.after_thawing = setting.dish.after_thawing;
    planned.served = setting.dish.served;
    planned.thaw_lead =
        setting.windows.thaw ? std::optional{setting.windows.thaw->lead} : setting.dish.thaw_lead;
    return say_thaw(planned, setting.style.language);
}

kitchen::EventWords thaw_words(const Setting& setting) {
    const auto& language = setting.style.language;
    const auto method = method_of(setting);
    kitchen::EventWords words{language.say(thaw_key(method), {bags_of(setting)}), {}};
    if (!setting.windows.ways.empty()) {
        if (method == kitchen::ThawMethod::Refrigerator) {
            words.description = capitalised(language.say("thaw.rack"));
        }
        add_cautions(words.description, setting);
        add_pack_cautions(words.description, setting);
        return words;
    }
    const auto& window = setting.windows.thaw;
    if (window && window->no_earlier != window->no_later) {
        words.description =
            say_window(setting, "plan.thaw-window", window->no_earlier, window->no_later);
    }
    add_sentence(words.description, capitalised(label_thaw_line(setting)));
    add_label_cautions(words.description, setting, CautionFor::Thawing);
    return words;
}

kitchen::EventWords look_words(const Setting& setting) {
    kitchen::EventWords words{setting.style.language.say("plan.look", {bags_of(setting)}), {}};
    for (const auto& remark : setting.line.remarks) {
        const bool tight = remark.id == kitchen::RemarkId::ThawWindowTight ||
                           remark.id == kitchen::RemarkId::ThawWindowTightToday;
        if (tight && remark.dish == setting.number) {
            words.description = say_remark(setting.line, setting.dishes, remark, setting.style);
        }
    }
    return words;
}

/// How it is cooked; for as long as the way that is left takes, where it is another one.
std::string cooking_of(const Setting& setting) {
    const auto& ways = setting.windows.ways;
    if (!setting.dish.package.cook) {
        return {};
    }
    auto cook = *setting.dish.package.cook;
    if (!ways.empty() && ways.front().method == kitchen::ThawMethod::FromFrozen) {
        const auto& window = ways.front().cook;
        const auto held = kitchen::with_hold({}, setting.dish.hold).low;
        cook.time = kitchen::TimeRange{setting.line.eat - window.no_later - held,
                                       setting.line.eat - window.no_earlier - held};
    }
    return say_cooking(cook, setting.style);
}

kitchen::EventWords start_words(const Setting& setting) {
    const auto& language = setting.style.language;
    const bool frozen = method_of(setting) == kitchen::ThawMethod::FromFrozen;
    kitchen::EventWords words{language.say(frozen ? "plan.start-frozen" : "plan.start",
                                           {bags_of(setting), cooking_of(setting)}),
                              {}};
    if (setting.windows.outlook == kitchen::Outlook::OnlyIfThawed) {
        words.description = language.say("plan.only-if-thawed");
    }
    const auto& window = setting.windows.cook;
    if (window && window->no_earlier != window->no_later) {
        add_sentence(words.description, say_window(setting, "plan.start-window", window->no_earlier,
                                                   window->no_later));
    }
    if (frozen) {
        add_cautions(words.description, setting);
    }
    if (!setting.windows.ways.empty()) {
        add_passage(words.description, setting);
    }
    add_label_cautions(words.description, setting, CautionFor::Cooking);
    return words;
}

kitchen::EventWords add_words(const Setting& setting, const kitchen::Finish& finish) {
    const auto& language = setting.style.language;
    const auto what = say_quantity(finish.add, setting.style);
    kitchen::EventWords words{
        setting.named == DishNamed::ByLane ? language.say("plan-sheet.add", {what})
                                           : language.say("plan.add", {what, dish_of(setting)}),
        finish.bag.empty() ? std::string{} : language.say("plan.waits", {finish.bag})};
    add_cautions_of(words.description, setting, finish.where);
    return words;
}

/// "Start 300 g rice beside it (pot, 15 min)"; below, what is to be done, and when it is ready.
kitchen::EventWords side_words(const Setting& setting, std::size_t index) {
    const auto& language = setting.style.language;
    const auto& side = setting.dish.package.sides[index];
    const auto what = say_side(side, setting.style);
    kitchen::EventWords words{setting.named == DishNamed::ByLane
                                  ? language.say("side.start", {what})
                                  : language.say("side.start-for", {what, dish_of(setting)}),
                              {}};
    for (const auto& step : side.steps) {
        add_sentence(words.description, step);
    }
    add_cautions_of(words.description, setting, side.where);
    for (const auto& window : setting.windows.sides) {
        if (window.side == index) {
            add_sentence(words.description,
                         language.say("side.ready", {clock_at(setting, window.ready)}));
        }
    }
    return words;
}

kitchen::EventWords ready_words(const Setting& setting) {
    const auto& language = setting.style.language;
    const auto& cook = setting.dish.package.cook;
    const bool is_uncooked = setting.dish.raw && !cook;
    const auto dish =
        is_uncooked ? dish_of(setting) : say_sized(setting.dish.package, setting.style);
    kitchen::EventWords words{
        setting.named == DishNamed::ByLane
            ? language.say(is_uncooked ? "plan-sheet.uncooked" : "plan-sheet.ready")
            : language.say(is_uncooked ? "plan.uncooked" : "plan.ready", {dish}),
        {}};
    if (cook && cook->until) {
        words.description =
            language.say("cook-day-card.done-at", {say_target(*cook->until, setting.style)});
    }
    for (const auto& caution : setting.dish.cautions) {
        if (is_of_hold(caution)) {
            add_sentence(words.description, say_caution(caution, language));
        }
    }
    if (!cook) { // no start of cooking says them
        add_label_cautions(words.description, setting, CautionFor::Cooking);
    }
    return words;
}

/// "Lentil stew (for 2)"; "200 g green beans beside Lentil stew (for 2)".
std::string say_part(const kitchen::Package& package, std::optional<std::size_t> side,
                     const Style& style) {
    const auto dish = say_sized(package, style);
    return side ? style.say("side.beside", {say_quantity(package.sides[*side].add, style), dish})
                : dish;
}

} // namespace

std::string say_weekday_date(kitchen::LocalMinute local, const Language& language) {
    const auto parts = parts_of(local);
    const auto weekday = language.say("weekday." + std::to_string(parts.weekday));
    return language.say("date.with-weekday", {weekday, say_date(parts.date, language)});
}

std::string say_day_of_month(kitchen::LocalMinute local, const Language& language) {
    const auto parts = parts_of(local);
    return language.say("plan-sheet.midnight",
                        {language.say("weekday." + std::to_string(parts.weekday)),
                         std::to_string(static_cast<unsigned>(parts.date.day()))});
}

std::string say_time_of_day(kitchen::LocalMinute local, const Language& language) {
    const auto minutes = parts_of(local).of_day.count();
    return language.say("time.clock",
                        {fmt::format("{:02}", minutes / 60), fmt::format("{:02}", minutes % 60)});
}

std::string say_clock(kitchen::LocalMinute local, const Language& language) {
    return language.say("date.with-time",
                        {say_weekday_date(local, language), say_time_of_day(local, language)});
}

std::string say_span(std::chrono::minutes span, const Language& language) {
    constexpr std::chrono::days day{1};
    if (span >= 2 * day && span % day == std::chrono::minutes{0}) {
        return say_days(std::chrono::duration_cast<std::chrono::days>(span), language);
    }
    return say_time_range({span, span}, language);
}

kitchen::EventWords say_event(const kitchen::Timeline& timeline,
                              std::span<const kitchen::TimelineDish> dishes,
                              const TimelineEvent& event, const Style& style, DishNamed named) {
    const Setting setting{
        timeline, dishes,  dishes[event.dish], timeline.dishes[event.dish], style, event.dish,
        named,    event.at};
    switch (event.what) {
    case TimelineStep::Thaw: return thaw_words(setting);
    case TimelineStep::Look: return look_words(setting);
    case TimelineStep::Start: return start_words(setting);
    case TimelineStep::Side: return side_words(setting, event.side.value_or(0));
    case TimelineStep::Add:
        return add_words(setting, setting.dish.package.finish[event.finish.value_or(0)]);
    case TimelineStep::Ready: break;
    }
    return ready_words(setting);
}

std::string say_remark(const kitchen::Timeline& timeline,
                       std::span<const kitchen::TimelineDish> dishes,
                       const kitchen::TimelineRemark& remark, const Style& style) {
    const auto& language = style.language;
    std::vector<std::string> values;
    for (const auto& value : remark.values) {
        if (const auto* instant = std::get_if<Instant>(&value)) {
            values.push_back(say_clock(on_clock(timeline.clock, *instant), language));
        } else if (const auto* date = std::get_if<kitchen::Date>(&value)) {
            values.push_back(say_date(*date, language));
        } else if (const auto* parts = std::get_if<std::vector<kitchen::DishPart>>(&value)) {
            values.push_back(joined(*parts, "; ", [&](const kitchen::DishPart& part) {
                return say_part(dishes[part.dish].package, part.side, style);
            }));
        } else {
            values.push_back(say_span(std::get<std::chrono::minutes>(value), language));
        }
    }
    return language.say("timeline." + std::string{rule_of(remark.id).key}, values);
}

} // namespace thawslip::wording

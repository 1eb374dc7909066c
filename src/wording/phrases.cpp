#include "wording/phrases.h"

#include "kitchen/figures.h"
#include "kitchen/measures/temperature_text.h"
#include "wording/typography.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::wording {
namespace {

bool whole_hours(std::chrono::minutes duration) {
    return duration.count() % 60 == 0 && duration.count() > 0;
}

/// A figure counted in hours, half hours as a fraction: "7", "1½".
bool half_hours(std::chrono::minutes duration) {
    return duration.count() % 30 == 0 && duration.count() > 60;
}

std::string hours_figure(std::chrono::minutes duration) {
    auto text = std::to_string(duration.count() / 60);
    return duration.count() % 60 == 0 ? text : text + "½";
}

/// The method's phrase, and the one to use where no time can be given.
struct ThawKeys {
    std::string_view timed;
    std::string_view rule;
};

// By Form: in full, tight, short, least.
constexpr std::array<ThawKeys, 4> in_the_refrigerator = {
    {{"thaw.refrigerator", "thaw.refrigerator-rule"},
     {"thaw.refrigerator-tight", "thaw.refrigerator-rule"},
     {"thaw.refrigerator-short", "thaw.refrigerator-rule"},
     {"thaw.refrigerator-least", "thaw.refrigerator-rule-least"}}};
constexpr std::array<ThawKeys, 4> in_cold_water = {
    {{"thaw.cold-water", "thaw.cold-water-rule"},
     {"thaw.cold-water", "thaw.cold-water-rule"},
     {"thaw.cold-water", "thaw.cold-water-rule"},
     {"thaw.cold-water-least", "thaw.cold-water-rule-least"}}};

ThawKeys thaw_keys(kitchen::ThawMethod method, Form form) {
    switch (method) {
    case kitchen::ThawMethod::Refrigerator:
        return in_the_refrigerator.at(static_cast<std::size_t>(form));
    case kitchen::ThawMethod::ColdWater: return in_cold_water.at(static_cast<std::size_t>(form));
    case kitchen::ThawMethod::Microwave: return {"thaw.microwave", "thaw.microwave-rule"};
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return {"thaw.from-frozen", "thaw.from-frozen"};
}

std::string_view placing_key(kitchen::Placing placing) {
    switch (placing) {
    case kitchen::Placing::Rack: return "thaw.rack";
    case kitchen::Placing::Tray: return "thaw.tray";
    case kitchen::Placing::Stacked: break;
    }
    return "thaw.stacked";
}

/// Where nothing is known of the bag, a time would be a guess that looks like a measurement.
std::string say_thaw_method(const kitchen::PlannedPackage& planned, const Language& language,
                            Form form) {
    if (planned.served == kitchen::Served::Frozen) {
        return language.say("thaw.eaten-frozen");
    }
    const auto keys = thaw_keys(planned.package.thaw.method, form);
    const auto time = kitchen::thaw_time(planned);
    if (!time) {
        return language.say(keys.rule);
    }
    if (planned.package.thaw.method != kitchen::ThawMethod::Refrigerator) {
        return language.say(keys.timed, {say_lead(time->high, language)});
    }
    const auto low = say_lead(time->low, language);
    const auto high = say_lead(time->high, language);
    if (form == Form::Least) {
        return language.say(keys.timed, {say_time_range({time->low, time->high}, language)});
    }
    return form < Form::Short
               ? language.say(keys.timed,
                              {say_placing(planned.thaw_lead->placing, language), low, high})
               : language.say(keys.timed, {low, high});
}

/// "…; cook within 3 days of thawing", or eat: by the lists' lower figure.
std::string with_days_left(const std::string& text, const kitchen::PlannedPackage& planned,
                           const Language& language, Form form) {
    const std::string eaten = is_eaten_as_it_is(planned) ? "-eaten" : "";
    const std::string least = form == Form::Least ? "-least" : "";
    const auto days = planned.after_thawing->low.count();
    const std::string key = days == 0   ? "thaw.same-day"
                            : days == 1 ? "thaw.within-day"
                                        : "thaw.within-days";
    return language.say(key + eaten + least, {text, std::to_string(days)});
}

std::string day_of(kitchen::Date date) {
    return std::to_string(static_cast<unsigned>(date.day()));
}

/// "Last 10 min", "last hour", "last 2 h": in Spanish the hours are of another gender than minutes,
/// and one hour is no plural in any language. `form` is the end of the phrases' keys.
std::string say_before_end(std::chrono::minutes time, const std::string& form,
                           const Language& language) {
    constexpr std::chrono::minutes hour{60};
    constexpr std::chrono::minutes most_in_minutes{180}; // as say_time_range has it
    if (time == hour) {
        return language.say("when.before-end-hour" + form);
    }
    return whole_hours(time) || time > most_in_minutes
               ? language.say("when.before-end-hours" + form, {say_duration(time, language)})
               : language.say("when.before-end" + form,
                              {language.say("time.minutes", {std::to_string(time.count())})});
}

std::string month_in(const std::string& table, kitchen::Date date, const Language& language) {
    return language.say(table + std::to_string(static_cast<unsigned>(date.month())));
}

} // namespace

bool is_eaten_as_it_is(const kitchen::PlannedPackage& planned) {
    return planned.served == kitchen::Served::AsItIs && !planned.package.cook;
}

std::string say_date(kitchen::Date date, const Language& language) {
    return language.say("date.form", {day_of(date), month_in("month.", date, language),
                                      std::to_string(static_cast<int>(date.year()))});
}

std::string say_date_in_month(kitchen::Date date, const Language& language) {
    return language.say("date.in-month", {day_of(date), month_in("month.", date, language)});
}

std::string say_month(kitchen::Date date, const Language& language) {
    return language.say("date.month", {month_in("month-name.", date, language),
                                       std::to_string(static_cast<int>(date.year()))});
}

std::string say_duration(std::chrono::minutes duration, const Language& language) {
    if (whole_hours(duration)) {
        return language.say("time.hours", {hours_figure(duration)});
    }
    if (duration.count() < 60) {
        return language.say("time.minutes", {std::to_string(duration.count())});
    }
    return language.say("time.hours-minutes", {std::to_string(duration.count() / 60),
                                               std::to_string(duration.count() % 60)});
}

std::string say_lead(std::chrono::minutes lead, const Language& language) {
    return half_hours(lead) ? language.say("time.hours", {hours_figure(lead)})
                            : say_duration(lead, language);
}

std::string say_lead_in_days(std::chrono::minutes lead, const Language& language) {
    constexpr std::chrono::days least{2};
    const auto days = std::chrono::floor<std::chrono::days>(lead);
    auto text = say_lead(lead, language);
    if (days < least) {
        return text;
    }
    const auto in_days = say_days(days, language);
    return language.say(
        "time.lead",
        {text, lead == days
                   ? in_days
                   : language.say("time.days-more", {in_days, say_lead(lead - days, language)})});
}

std::string say_days(std::chrono::days days, const Language& language) {
    return days.count() == 1 ? language.say("time.day")
                             : language.say("time.days", {std::to_string(days.count())});
}

std::string say_time_range(const kitchen::TimeRange& range, const Language& language) {
    if (range.low == range.high) {
        return say_duration(range.low, language);
    }
    const auto both = [&](std::string_view unit, const std::string& low, const std::string& high) {
        return language.say(unit, {language.say("time.range", {low, high})});
    };
    const auto in_hours = [](std::chrono::minutes m) { return whole_hours(m) || half_hours(m); };
    if (in_hours(range.low) && in_hours(range.high)) {
        return both("time.hours", hours_figure(range.low), hours_figure(range.high));
    }
    if (range.high.count() <= 180) {
        return both("time.minutes", std::to_string(range.low.count()),
                    std::to_string(range.high.count()));
    }
    return language.say("time.range",
                        {say_duration(range.low, language), say_duration(range.high, language)});
}

std::string say_when(const kitchen::When& when, const Language& language) {
    using Anchor = kitchen::When::Anchor;
    switch (when.anchor) {
    case Anchor::AtStart: return language.say("when.at-start");
    case Anchor::AfterStart:
        return language.say("when.after", {say_duration(when.offset, language)});
    case Anchor::Halfway: return language.say("when.halfway");
    case Anchor::BeforeEnd: return say_before_end(when.offset, "", language);
    case Anchor::AtServing: return language.say("when.at-serving");
    }
    return {};
}

std::string say_when_head(const kitchen::When& when, const Language& language) {
    return capitalised(when.anchor == kitchen::When::Anchor::BeforeEnd
                           ? say_before_end(when.offset, "-head", language)
                           : say_when(when, language));
}

std::string say_thaw(const kitchen::PlannedPackage& planned, const Language& language, Form form) {
    const auto& thaw = planned.package.thaw;
    auto text = say_thaw_method(planned, language, form);
    if (thaw.method == kitchen::ThawMethod::FromFrozen && !planned.other_thaws.empty()) {
        text = language.say("thaw.not-needed", {text});
    }
    if (planned.after_thawing && thaw.method == kitchen::ThawMethod::Refrigerator) {
        text = with_days_left(text, planned, language, form);
    }
    if (!thaw.note.empty()) {
        text += ". " + capitalised(thaw.note);
    }
    return text;
}

std::string say_other_thaw(const kitchen::PlannedPackage& first, const kitchen::PlannedPackage& way,
                           const Language& language, Form form) {
    auto text = say_thaw(way, language, form);
    const auto& written = first.package.cook;
    const auto& cook = way.package.cook;
    if (!written || !written->time || cook->time == written->time) {
        return text;
    }
    if (cook->time) {
        return language.say("thaw.cooks", {text, say_time_range(*cook->time, language)});
    }
    const bool is_longer = way.package.thaw.method == kitchen::ThawMethod::FromFrozen;
    return language.say(is_longer ? "thaw.cooks-longer" : "thaw.cooks-sooner", {text});
}

std::string say_placing(kitchen::Placing placing, const Language& language) {
    return language.say(placing_key(placing));
}

std::string say_sized(const kitchen::Package& package, const Style& style) {
    return package.size
               ? style.say("day-sheet.of-size", {package.dish, std::to_string(package.servings)})
               : package.dish;
}

std::string say_sized_dish(const kitchen::Package& package, bool raw, const Style& style) {
    return say_dish(say_sized(package, style), raw, style.language);
}

std::string say_side(const kitchen::Side& side, const Style& style) {
    const auto what = say_quantity(side.add, style);
    const auto takes = say_time_range(side.takes, style.language);
    return side.in.empty() ? style.say("side.takes", {what, takes})
                           : style.say("side.takes-in", {what, side.in, takes});
}

std::string say_cooking(const kitchen::Cook& cook, const Language& language) {
    auto text = cook.in;
    if (!cook.setting.empty()) {
        text = language.say("cook.setting", {text, cook.setting});
    }
    if (cook.time) {
        text = language.say("cook.time", {text, say_time_range(*cook.time, language)});
    }
    return text;
}

std::string say_cooking(const kitchen::Cook& cook, const Style& style) {
    auto turned = cook;
    turned.setting = say_setting(cook.setting, style);
    return say_cooking(turned, style.language);
}

std::string say_dish(std::string_view dish, bool raw, const Language& language) {
    return (raw ? language.say("label.raw") + "\u00A0·\u00A0" : std::string{}) + std::string{dish};
}

std::string say_numbers(std::vector<int> numbers, const Language& language) {
    std::ranges::sort(numbers);
    std::string text;
    for (std::size_t i = 0; i < numbers.size();) {
        auto last = i;
        while (last + 1 < numbers.size() && numbers[last + 1] == numbers[last] + 1) {
            ++last;
        }
        last = last == i + 1 ? i : last; // two are no range
        const auto first = std::to_string(numbers[i]);
        text += (text.empty() ? "" : ", ") +
                (last == i ? first
                           : language.say("time.range", {first, std::to_string(numbers[last])}));
        i = last + 1;
    }
    return text;
}

std::string say_cold_limit(double fahrenheit, const Style& style) {
    auto text =
        kitchen::published_text(fahrenheit, kitchen::TemperatureUse::ColdLimit, style.units);
    for (auto at = text.find('-'); at != std::string::npos; at = text.find('-')) {
        text.replace(at, 1, "−"); // below zero, and set as such
    }
    return with_no_break_spaces(text);
}

std::string say_keep_until_head(const kitchen::KeepUntil& keep_until, const Language& language) {
    return language.say(keep_until.basis == kitchen::DateBasis::SetByCook ? "label.use-by"
                                                                          : "label.best-by");
}

std::string say_keep_until(const kitchen::KeepUntil& keep_until, const Language& language) {
    return with_no_break_spaces(say_keep_until_head(keep_until, language) + " " +
                                say_date(keep_until.date, language));
}

Paragraph plain(std::string_view text) {
    Paragraph paragraph;
    paragraph.spans.push_back({typeset_text(text), Emphasis::Plain});
    return paragraph;
}

Paragraph as_is(std::string text, Emphasis emphasis) {
    Paragraph paragraph;
    paragraph.spans.push_back({std::move(text), emphasis});
    return paragraph;
}

void add_sentence(Paragraph& paragraph, const std::string& head, const std::vector<Span>& words) {
    paragraph.spans.push_back({". ", Emphasis::Plain});
    paragraph.spans.push_back({head + " ", Emphasis::Strong});
    paragraph.spans.insert(paragraph.spans.end(), words.begin(), words.end());
}

Paragraph labelled(std::string_view label, std::string_view text) {
    auto paragraph = plain(text);
    paragraph.label = typeset_text(label);
    return paragraph;
}

std::string say_thaw_label(kitchen::ThawMethod method, const Language& language) {
    return language.say(method == kitchen::ThawMethod::FromFrozen ? "label.do-not-thaw"
                                                                  : "label.thaw");
}

} // namespace thawslip::wording

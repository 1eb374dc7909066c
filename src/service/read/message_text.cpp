#include "service/read/message_text.h"

#include "base/letters.h"
#include "base/list.h"
#include "kitchen/measures/quantity.h"
#include "kitchen/measures/temperature.h"
#include "wording/phrases.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::service {
namespace {

using kitchen::DateBasis;
using wording::Style;

std::string past_text(const code::KeepUntil& keep, kitchen::Date today, const Style& style) {
    const auto past = kitchen::days_between(keep.date, today);
    if (past.count() <= 0) {
        return {};
    }
    const auto days = say_days(past, style.language);
    return " - " +
           style.say(keep.basis == DateBasis::SetByCook ? "read.past-use-by" : "read.past-best",
                     {days});
}

/// Each line is a label and what belongs to it; nothing where there is nothing to say.
class Lines {
public:
    void add(const std::string& label, const std::string& text) {
        if (!text.empty()) {
            text_ += (label.empty() ? "" : label + " ") + text + "\n";
        }
    }
    std::string take() { return std::move(text_); }

private:
    std::string text_;
};

void add_dates(Lines& lines, const code::Message& message, kitchen::Date today,
               const Style& style) {
    if (message.made) {
        lines.add(style.say("label.made"), say_date(*message.made, style.language));
    }
    if (const auto& keep = message.keep_until) {
        lines.add(say_keep_until_head({keep->date, keep->basis, std::nullopt}, style.language),
                  say_date(keep->date, style.language) + past_text(*keep, today, style));
    }
}

/// \param way a message or another way to thaw
template <class Way>
kitchen::PlannedPackage planned_way(const Way& way, kitchen::ThawMethod method) {
    kitchen::PlannedPackage planned;
    planned.package.thaw.method = method;
    if (const auto& time = way.thaw_time) {
        planned.thaw_lead =
            kitchen::ThawLead{.method = method,
                              .placing = way.placing.value_or(kitchen::Placing::Tray),
                              .lead = time->high,
                              .soonest = time->low};
    }
    if (const auto days = way.cook_within_days) {
        planned.after_thawing = kitchen::DaysLeft{std::chrono::days{*days}, {}, {}};
    }
    return planned;
}

/// The thaw line, and one for each other way.
void add_thaws(Lines& lines, const code::Message& message, const Style& style) {
    if (!message.thaw) {
        return;
    }
    auto planned = planned_way(message, *message.thaw);
    planned.package.thaw.note = message.thaw_note;
    planned.package.cook.emplace().time = message.cooking.time;
    planned.other_thaws = mapped(message.other_thaws, [&message](const code::OtherThaw& other) {
        auto way = planned_way(other, other.thaw);
        way.package.cook.emplace().time =
            other.cook_time || other.cooks_longer ? other.cook_time : message.cooking.time;
        return way;
    });
    const bool never =
        *message.thaw == kitchen::ThawMethod::FromFrozen && message.other_thaws.empty();
    lines.add(style.say(never ? "label.do-not-thaw" : "label.thaw"),
              say_thaw(planned, style.language));
    for (const auto& other : planned.other_thaws) {
        lines.add(style.say("thaw.or"), say_other_thaw(planned, other, style.language));
    }
}

/// An amount in the style's measures. A code has capitals alone, of which "1 T" may have been a
/// teaspoon or a tablespoon: that stays as it is.
std::string amount_text(const std::string& what, const Style& style) {
    const bool is_as_written = std::ranges::any_of(what, is_lower);
    const auto quantity = kitchen::parse_quantity(what);
    return is_as_written && quantity ? say_quantity(quantity.value(), style) : what;
}

std::string addition_text(const code::Addition& addition, const Style& style) {
    return say_when(addition.when, style.language) + ": " + amount_text(addition.what, style) +
           (addition.bag.empty() ? "" : " (" + addition.bag + ")");
}

std::string target_text(const code::Target& target, const Style& style) {
    const auto written =
        fmt::format("{:g} {}", target.tenths / 10.0,
                    target.scale == kitchen::TemperatureScale::Celsius ? "°C" : "°F");
    const auto temperature = kitchen::parse_temperature(written);
    return temperature ? say_target(temperature.value(), style) : written;
}

/// By their names in the language, whatever language the cook wrote.
std::string allergens_text(const std::vector<std::string>& written, const Style& style) {
    return wording::say_contains(kitchen::read_allergens(written), style);
}

} // namespace

std::string cooking_text(const code::Cooking& cooking, const Style& style) {
    kitchen::Cook cook;
    cook.in = cooking.in;
    cook.setting = cooking.setting;
    cook.time = cooking.time;
    auto text = say_cooking(cook, style);
    if (cooking.until) {
        text += (text.empty() ? "" : ", ") +
                style.say("read.until", {target_text(*cooking.until, style)});
    }
    return text;
}

std::string message_text(const code::Message& message, kitchen::Date today, const Style& style) {
    Lines lines;
    lines.add("", wording::say_dish(message.dish, message.raw, style.language) +
                      (message.bag_id.empty() ? "" : "  (" + message.bag_id + ")"));
    if (message.servings) {
        lines.add("", style.say("label.serves", {std::to_string(*message.servings)}));
    }
    add_dates(lines, message, today, style);
    add_thaws(lines, message, style);
    for (const auto& addition : message.additions) {
        lines.add(style.say("label.add"), addition_text(addition, style));
    }
    lines.add(style.say("label.cook"), cooking_text(message.cooking, style));
    for (std::size_t i = 0; i < message.steps.size(); ++i) {
        lines.add(fmt::format("{}.", i + 1), message.steps[i]);
    }
    for (const auto& caution : message.cautions) {
        lines.add(style.say("label.caution"), caution);
    }
    lines.add(style.say("label.contains"), allergens_text(message.allergens, style));
    lines.add(style.say("label.may-contain"), allergens_text(message.may_contain, style));
    lines.add(style.say("label.notes"), message.note);
    if (message.extent == code::Extent::SeeCard) {
        lines.add("", style.say("read.see-card", {message.bag_id}));
    }
    lines.add("", style.say("standing.local-rules"));
    return lines.take();
}

} // namespace thawslip::service

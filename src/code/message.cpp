#include "code/message.h"

#include "code/fold.h"
#include "kitchen/cautions/cautions.h"
#include "kitchen/figures.h"

#include <algorithm>
#include <cmath>

namespace thawslip::code {
namespace {

using std::chrono::minutes;

constexpr int most_servings = 9999;
constexpr int most_tenths = 9999;
constexpr minutes longest_time = std::chrono::days{30};

minutes in_range(minutes time) {
    return std::clamp(time, minutes{0}, longest_time);
}

kitchen::TimeRange in_range(kitchen::TimeRange time) {
    const auto [low, high] = std::minmax(time.low, time.high);
    return {in_range(low), in_range(high)};
}

bool writable(kitchen::Date date) {
    return date.ok() && date.year() >= std::chrono::year{1000} &&
           date.year() <= std::chrono::year{9999};
}

kitchen::When folded(kitchen::When when) {
    using Anchor = kitchen::When::Anchor;
    const bool counted = when.anchor == Anchor::AfterStart || when.anchor == Anchor::BeforeEnd;
    when.offset = counted ? in_range(when.offset) : minutes{0};
    return when;
}

std::vector<std::string> folded(const std::vector<std::string>& words) {
    std::vector<std::string> kept;
    for (const std::string& each : words) {
        if (std::string text = fold(each); !text.empty()) {
            kept.push_back(std::move(text));
        }
    }
    return kept;
}

std::vector<Addition> folded(const std::vector<Addition>& additions) {
    std::vector<Addition> kept;
    for (const Addition& each : additions) {
        if (std::string what = fold(each.what); !what.empty()) {
            kept.push_back({folded(each.when), std::move(what), fold(each.bag)});
        }
    }
    return kept;
}

Cooking folded(Cooking cooking) {
    cooking.in = fold(cooking.in);
    cooking.setting = fold(cooking.setting);
    if (cooking.time) {
        cooking.time = in_range(*cooking.time);
    }
    if (cooking.until) {
        cooking.until->tenths = std::clamp(cooking.until->tenths, -most_tenths, most_tenths);
    }
    return cooking;
}

/// What belongs to a way of thawing does not stand without it. \param message or an OtherThaw
template <class Way>
void fold_way(Way& message, std::optional<kitchen::ThawMethod> method) {
    using kitchen::ThawMethod;
    if (!method || method == ThawMethod::FromFrozen) {
        message.thaw_time.reset();
    } else if (message.thaw_time) {
        message.thaw_time = in_range(*message.thaw_time);
    }
    if (method != ThawMethod::Refrigerator || !message.thaw_time) {
        message.placing.reset();
    } else {
        message.placing = message.placing.value_or(kitchen::Placing::Tray);
    }
    auto& within = message.cook_within_days;
    if (method != ThawMethod::Refrigerator || (within && (*within < 1 || *within > 99))) {
        within.reset();
    }
}

/// How long another way cooks stands only where the cooking time does not hold for it.
void fold_cooking(OtherThaw& way, const Message& message) {
    const bool differs = way.thaw == kitchen::ThawMethod::FromFrozen &&
                         message.thaw != kitchen::ThawMethod::FromFrozen && message.cooking.time;
    if (!differs) {
        way.cook_time.reset();
    } else if (way.cook_time) {
        way.cook_time = in_range(*way.cook_time);
    }
    way.cooks_longer = differs && way.cooks_longer && !way.cook_time;
}

void fold_thaw(Message& message) {
    message.thaw_note = message.thaw ? fold(message.thaw_note) : "";
    fold_way(message, message.thaw);
    if (!message.thaw) {
        message.other_thaws.clear();
    }
    for (auto& other : message.other_thaws) {
        fold_way(other, other.thaw);
        fold_cooking(other, message);
    }
}

/// In the code's own letters, as those of the cautions.
constexpr std::string_view eaten_frozen = "EAT IT FROZEN - DO NOT THAW";

Target target_for(const kitchen::Temperature& temperature) {
    const bool celsius = temperature.written_in == kitchen::TemperatureScale::Celsius;
    const double degrees = celsius ? temperature.celsius : temperature.celsius * 1.8 + 32.0;
    const double limit = most_tenths / 10.0;
    const double tenths = std::round(std::clamp(degrees, -limit, limit) * 10.0);
    return {static_cast<int>(tenths), temperature.written_in};
}

/// What a caution of another method than the first is for, in the code's own words.
std::string_view method_in_code(kitchen::ThawMethod method) {
    switch (method) {
    case kitchen::ThawMethod::Refrigerator: return "FROM REFRIGERATOR";
    case kitchen::ThawMethod::ColdWater: return "FROM COLD WATER";
    case kitchen::ThawMethod::Microwave: return "FROM MICROWAVE";
    case kitchen::ThawMethod::FromFrozen: break;
    }
    return "FROZEN";
}

std::string in_code(const kitchen::Caution& caution) {
    const auto words = kitchen::words_in_code(caution);
    std::string when;
    for (const auto method : caution.thawed_by) {
        when += (when.empty() ? "IF " : " OR ") + std::string{method_in_code(method)};
    }
    return words.empty() || when.empty() ? words : when + " - " + words;
}

/// Those that stop harm, the gravest first.
std::vector<std::string> cautions_in_code(const kitchen::PlannedPackage& planned) {
    std::vector<std::string> cautions;
    for (const auto& caution : planned.cautions) {
        if (caution.level >= kitchen::CautionLevel::Card) {
            auto words = in_code(caution);
            if (std::ranges::find(cautions, words) == cautions.end()) {
                cautions.push_back(std::move(words));
            }
        }
    }
    return cautions;
}

/// \param message or an OtherThaw
template <class Way>
void set_times(Way& message, const kitchen::PlannedPackage& planned) {
    message.thaw_time = kitchen::thaw_time(planned);
    if (planned.thaw_lead) {
        message.placing = planned.thaw_lead->placing;
    }
    if (const auto within = kitchen::cook_within(planned)) {
        message.cook_within_days = static_cast<int>(within->count());
    }
}

OtherThaw other_thaw(const kitchen::PlannedPackage& planned) {
    OtherThaw other;
    other.thaw = planned.package.thaw.method;
    set_times(other, planned);
    if (const auto& cook = planned.package.cook) {
        other.cook_time = cook->time;
        other.cooks_longer = !cook->time;
    }
    return other;
}

/// How it thaws, or that it does not: the grammar has no line for food that nobody cooks, so that
/// stands first among the cautions.
void set_thaw(Message& message, const kitchen::PlannedPackage& planned) {
    if (planned.served == kitchen::Served::Frozen) {
        message.cautions.insert(message.cautions.begin(), std::string{eaten_frozen});
        return;
    }
    message.thaw = planned.package.thaw.method;
    set_times(message, planned);
    message.thaw_note = planned.package.thaw.note;
    for (const auto& other : planned.other_thaws) {
        message.other_thaws.push_back(other_thaw(other));
    }
}

} // namespace

Message folded(Message message) {
    message.dish = fold(message.dish);
    if (message.dish.empty()) {
        message.dish = "DISH";
    }
    if (message.servings && (*message.servings < 1 || *message.servings > most_servings)) {
        message.servings.reset();
    }
    message.bag_id = fold_bag_id(message.bag_id);
    if (message.made && !writable(*message.made)) {
        message.made.reset();
    }
    if (message.keep_until && !writable(message.keep_until->date)) {
        message.keep_until.reset();
    }
    fold_thaw(message);
    message.additions = folded(message.additions);
    message.cooking = folded(std::move(message.cooking));
    message.cautions = folded(message.cautions);
    message.steps = folded(message.steps);
    message.allergens = folded(message.allergens);
    message.may_contain = folded(message.may_contain);
    message.note = fold(message.note);
    return message;
}

bool is_eaten_frozen(const Message& message) {
    return !message.thaw &&
           std::ranges::find(message.cautions, eaten_frozen) != message.cautions.end();
}

Message message_in_full(const kitchen::PlannedPackage& planned, const kitchen::Bag& bag) {
    const kitchen::Package& package = planned.package;
    Message message;
    message.dish = package.dish;
    message.raw = planned.raw;
    message.servings = package.servings;
    message.bag_id = bag.id;
    message.made = planned.made;
    message.keep_until = KeepUntil{planned.keep_until.date, planned.keep_until.basis};
    message.cautions = cautions_in_code(planned);
    set_thaw(message, planned);
    for (const kitchen::Finish& finish : planned.finish) {
        message.additions.push_back({finish.when, finish.add.as_written, finish.bag});
    }
    if (package.cook) {
        message.cooking = {package.cook->in, package.cook->setting, package.cook->time, {}};
        if (package.cook->until) {
            message.cooking.until = target_for(*package.cook->until);
        }
        message.steps = package.cook->steps;
    }
    message.allergens = package.contains;
    message.may_contain = package.may_contain;
    message.note = package.note;
    return message;
}

Message message_for(const kitchen::PlannedPackage& planned, const kitchen::Bag& bag) {
    return folded(message_in_full(planned, bag));
}

} // namespace thawslip::code

#include "app/new_day/interview.h"

#include "base/letters.h"
#include "base/number_in.h"
#include "intake/day_file.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::app {
namespace {

/// The whole number from `least` to `most` that a text is.
std::optional<int> number_within(const std::string& text, int least, int most) {
    const auto number = number_in<int>(text);
    return number && *number >= least && *number <= most ? number : std::nullopt;
}

/// A number, or nothing where the answer is empty or none comes.
std::optional<int> ask_number(const Ask& ask, const wording::Language& language,
                              const std::string& question, int least, int most) {
    auto shown = question;
    while (const auto answer = ask(shown)) {
        const auto number = number_within(*answer, least, most);
        if (number || answer->empty()) {
            return number;
        }
        shown = language.say("new.whole-number", {std::to_string(least), std::to_string(most)});
    }
    return std::nullopt;
}

std::string text_of(std::optional<int> number) {
    return number ? std::to_string(*number) : std::string{};
}

service::NewDish ask_dish(const Ask& ask, const wording::Language& language,
                          const std::string& number) {
    using intake::Limits;
    const auto say = [&](const char* key) { return language.say(key); };
    service::NewDish dish;
    dish.name = ask(language.say("new.name", {number})).value_or("");
    dish.servings = text_of(ask_number(ask, language, say("new.servings"), 1, Limits::servings));
    dish.bags = text_of(ask_number(ask, language, say("new.bags"), 1, Limits::bags));
    dish.food = ask(say("new.food")).value_or("");
    dish.weight = ask(say("new.weight")).value_or("");
    dish.thickness = ask(say("new.thickness")).value_or("");
    return dish;
}

} // namespace

std::vector<service::NewDish> ask_dishes(const Ask& ask, int count,
                                         const wording::Language& language) {
    constexpr int most = intake::Limits::packages;
    if (count == 0) {
        count = ask_number(ask, language, language.say("new.how-many"), 1, most).value_or(1);
    }
    std::vector<service::NewDish> dishes;
    for (int i = 1; i <= count; ++i) {
        const auto number = language.say("new.number", {std::to_string(i), std::to_string(count)});
        dishes.push_back(ask_dish(ask, language, number));
    }
    return dishes;
}

} // namespace thawslip::app

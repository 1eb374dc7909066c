#include "archive/limits.h"

#include "base/letters.h"
#include "base/shown.h"
#include "base/utf8.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::archive {
namespace {

bool is_date(const kitchen::Date& date) {
    return date.ok() && int{date.year()} >= Most::first_year && int{date.year()} <= Most::last_year;
}

bool are_names(const std::vector<std::string>& entries) {
    return std::ranges::all_of(entries, [](const std::string& entry) { return is_name(entry); });
}

bool is_weight(const std::optional<kitchen::Mass>& weight) {
    return !weight ||
           (std::isfinite(weight->grams) && weight->grams > 0 && weight->grams <= Most::grams);
}

bool is_lead(const std::optional<ThawRecord>& thaw) {
    return !thaw || !thaw->lead ||
           (thaw->lead->count() >= 0 && *thaw->lead <= std::chrono::days{Most::thaw_days});
}

} // namespace

bool is_name(std::string_view text, std::size_t letters) {
    return is_shown_line(text) && count_code_points(text) <= letters;
}

std::string named(std::string_view text) {
    if (text.size() <= Most::letters) {
        return shown(text);
    }
    auto front = text.substr(0, Most::dish_letters);
    front.remove_suffix(unfinished_utf8(front));
    return shown(front) + "…";
}

bool is_moment(std::string_view text) {
    constexpr std::string_view form = "0000-00-00T00:00:00";
    const auto number_at = [text](std::size_t place) {
        return (text[place] - '0') * 10 + (text[place + 1] - '0');
    };
    const bool has_form =
        std::ranges::equal(text.substr(0, form.size()), form,
                           [](char c, char of) { return of == '0' ? is_digit(c) : c == of; });
    const auto rest = text.substr(std::min(text.size(), form.size()));
    const bool is_second = rest.empty() || (rest.front() == '.' &&
                                            std::ranges::all_of(rest.substr(1), is_digit<char>));
    const auto day = has_form && is_second ? kitchen::parse_iso(text.substr(0, 10)) : std::nullopt;
    return day && is_date(*day) && number_at(11) < 24 && number_at(14) < 60 &&
           number_at(17) <= 60 && is_name(text);
}

bool can_be(const BagEvent& event) {
    return is_moment(event.at) && is_name(event.station) && is_name(event.boot) &&
           is_within(event.ordered, Most::ordered) && is_within(event.seq, Most::seq) &&
           is_within(event.clock, Most::clock) && is_within(event.uptime, Most::clock) &&
           event.offset >= -Most::clock && event.offset <= Most::clock &&
           is_name(event.place.value_or("")) && is_name(event.joined) &&
           is_within(event.undoes, Most::seq) &&
           event.joined.empty() == (event.state != State::Renamed);
}

std::optional<std::string> fault_in(const PackageRecord& package) {
    if (!is_name(package.dish, Most::dish_letters) || package.dish.empty() ||
        !is_name(package.words, 1000)) {
        return std::string{"has a name that cannot be"};
    }
    if (package.food && !(are_names(package.food->allergens) && are_names(package.food->classes))) {
        return std::string{"has an allergen or a kind of food that cannot be"};
    }
    if (!is_name(package.place)) {
        return std::string{"has a place that cannot be"};
    }
    if (!is_date(package.made) || !is_date(package.keep_until)) {
        return std::string{"has a date that cannot be"};
    }
    if (package.servings < 1 || package.servings > Most::servings) {
        return fmt::format("serves {}, expected 1 to {}", package.servings, Most::servings);
    }
    if (package.bags.empty() || package.bags.size() > Most::bags) {
        return fmt::format("has a number of bags that cannot be, expected 1 to {}", Most::bags);
    }
    if (!is_weight(package.weight)) {
        return fmt::format("has a weight that cannot be, expected at most {} kg",
                           Most::grams / 1000);
    }
    return is_lead(package.thaw)
               ? std::nullopt
               : std::optional{fmt::format("thaws for a time that cannot be, expected at most {} "
                                           "days",
                                           Most::thaw_days)};
}

std::optional<std::string> fault_in(const DayRecord& day) {
    if (!is_date(day.made)) {
        return std::string{"has no day"};
    }
    if (!is_name(day.kitchen)) {
        return std::string{"has a kitchen's name that cannot be"};
    }
    if (day.packages.size() > Most::packages || day.description.size() > Most::description) {
        return fmt::format("is larger than a description can be: {} dishes, {} bytes",
                           day.packages.size(), day.description.size());
    }
    return std::nullopt;
}

} // namespace thawslip::archive

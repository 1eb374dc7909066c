#include "base/number_list.h"

#include "base/number_in.h"

#include <algorithm>
#include <fmt/format.h>
#include <optional>
#include <set>

namespace thawslip {
namespace {

constexpr std::string_view parting = ",; \t";

/// The text with a hyphen for each dash, and no blank beside one.
std::string with_plain_dashes(std::string_view text) {
    std::string plain;
    for (std::size_t at = 0; at < text.size(); ++at) {
        const bool dash = text.substr(at, 3) == "–" || text.substr(at, 3) == "—";
        at += dash ? 2 : 0;
        const char c = dash ? '-' : text[at];
        if (c == '-') {
            plain.resize(plain.find_last_not_of(' ') + 1);
        }
        if (c != ' ' || !plain.ends_with('-')) {
            plain += c;
        }
    }
    return plain;
}

std::optional<int> whole_number(std::string_view text) {
    const auto number = number_in<int>(text);
    return number.value_or(-1) >= 0 ? number : std::nullopt;
}

/// Adds "3" or "3-5". \returns what is wrong with it, else nothing
std::optional<std::string> add_range(std::string_view item, int most, std::set<int>& numbers) {
    const auto dash = item.find('-');
    const auto first = whole_number(item.substr(0, dash));
    const auto last = dash == std::string_view::npos ? first : whole_number(item.substr(dash + 1));
    if (!first || !last) {
        return fmt::format("\"{}\" is no number and no range such as 3-5", item);
    }
    if (*last < *first) {
        return fmt::format("{} runs backwards: expected {}-{}", item, *last, *first);
    }
    if (*first < 1 || *last > most) {
        return fmt::format("{} is not within 1 to {}", item, most);
    }
    for (int number = *first; number <= *last; ++number) {
        numbers.insert(number);
    }
    return std::nullopt;
}

} // namespace

Result<std::vector<int>, std::string> read_number_list(std::string_view text, int most) {
    const auto plain = with_plain_dashes(text);
    std::set<int> numbers;
    for (auto at = plain.find_first_not_of(parting); at != std::string::npos;) {
        const auto end = std::min(plain.find_first_of(parting, at), plain.size());
        if (auto fault = add_range(std::string_view{plain}.substr(at, end - at), most, numbers)) {
            return Failure{*std::move(fault)};
        }
        at = plain.find_first_not_of(parting, end);
    }
    if (numbers.empty()) {
        return Failure{std::string{"expected numbers such as 3-5,9"}};
    }
    return std::vector<int>{numbers.begin(), numbers.end()};
}

} // namespace thawslip

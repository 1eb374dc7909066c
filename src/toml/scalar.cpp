#include "toml/scalar.h"

#include "toml/moment.h"

#include <charconv>

namespace thawslip::toml {
namespace {

constexpr std::string_view decimal_digits = "0123456789";

bool take_front(std::string_view& rest, std::string_view one_of) {
    const bool there = !rest.empty() && one_of.find(rest.front()) != std::string_view::npos;
    rest.remove_prefix(there ? 1 : 0);
    return there;
}

/// Takes digits off the front, and single underscores between them, which it leaves out.
std::string take_digits(std::string_view& rest, std::string_view digits) {
    std::string taken;
    for (;;) {
        const auto before = rest;
        const bool underscore = !taken.empty() && take_front(rest, "_");
        if (!take_front(rest, digits)) {
            rest = before;
            return taken;
        }
        taken += before[underscore ? 1 : 0];
    }
}

template <class T, class... Base>
std::optional<Content> converted(const std::string& digits, Base... base) {
    T number{};
    const auto* end = digits.data() + digits.size();
    const auto read = std::from_chars(digits.data(), end, number, base...);
    const bool whole = read.ec == std::errc{} && read.ptr == end;
    return whole ? std::optional<Content>{number} : std::nullopt;
}

/// `0xDEAD_BEEF`, `0o17`, `0b11`
std::optional<Content> based_number(std::string_view word) {
    struct Base {
        std::string_view prefix;
        std::string_view digits;
        int base;
    };
    constexpr Base bases[] = {
        {"0x", "0123456789abcdefABCDEF", 16}, {"0o", "01234567", 8}, {"0b", "01", 2}};
    for (const auto& [prefix, digits, base] : bases) {
        if (word.starts_with(prefix)) {
            word.remove_prefix(prefix.size());
            const auto taken = take_digits(word, digits);
            return word.empty() ? converted<std::int64_t>(taken, base) : std::nullopt;
        }
    }
    return std::nullopt;
}

/// `6`, `-0.5`, `1e3`, `+inf`
std::optional<Content> decimal_number(std::string_view word) {
    std::string plain = word.starts_with('-') ? "-" : "";
    take_front(word, "+-");
    if (word == "inf" || word == "nan") {
        return converted<double>(plain += word);
    }
    const auto whole = take_digits(word, decimal_digits);
    if (whole.empty() || (whole.size() > 1 && whole.front() == '0')) {
        return std::nullopt;
    }
    plain += whole;
    const bool has_point = take_front(word, ".");
    if (has_point) {
        const auto digits = take_digits(word, decimal_digits);
        plain += "." + digits;
        word = digits.empty() ? "." : word;
    }
    const bool has_power = take_front(word, "eE");
    if (has_power) {
        plain += word.starts_with('-') ? "e-" : "e";
        take_front(word, "+-");
        plain += take_digits(word, decimal_digits);
    }
    if (!word.empty()) {
        return std::nullopt;
    }
    return has_point || has_power ? converted<double>(plain) : converted<std::int64_t>(plain);
}

} // namespace

std::optional<Content> scalar_of(std::string_view word) {
    if (word == "true" || word == "false") {
        return Content{word == "true"};
    }
    if (auto number = based_number(word)) {
        return number;
    }
    if (auto number = decimal_number(word)) {
        return number;
    }
    return moment_of(word);
}

} // namespace thawslip::toml

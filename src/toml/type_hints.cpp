#include "toml/type_hints.h"

#include "base/letters.h"
#include "base/list.h"
#include "base/nearest.h"
#include "base/printable.h"
#include "toml/moment.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

/// Digits, and for a real number one point between them.
bool looks_like_number(std::string_view text, std::string_view expected) {
    const auto points = expected == expected_real ? std::ranges::count(text, '.') : 0;
    const auto digits = std::ranges::count_if(text, is_digit<char>);
    return !text.empty() && text.size() < 10 && points <= 1 && is_digit(text.front()) &&
           is_digit(text.back()) && digits + points == std::ssize(text);
}

std::string unquoted_hint(const Key& key, std::string_view expected, std::string_view text) {
    const bool number = expected == expected_integer || expected == expected_real;
    const bool truth = expected == expected_boolean && (text == "true" || text == "false");
    const bool date =
        expected == expected_date && text.size() == 10 && begins_like(text, "dddd-dd-dd");
    if (truth || date || (number && looks_like_number(text, expected))) {
        return fmt::format("write it without quotes: {} = {}", key.name, text);
    }
    return {};
}

} // namespace

std::string_view trimmed(std::string_view text) {
    const auto first = text.find_first_not_of(" \t");
    if (first == std::string_view::npos) {
        return {};
    }
    return text.substr(first, text.find_last_not_of(" \t") - first + 1);
}

std::string type_hint(const Key& key, std::string_view expected, const Value& found) {
    if (const auto* text = std::get_if<std::string>(&found.content)) {
        if (auto hint = unquoted_hint(key, expected, trimmed(*text)); !hint.empty()) {
            return hint;
        }
        if (expected == expected_list && text->size() <= 40) {
            return fmt::format("write {} = [{}]", key.name, in_quotes(*text));
        }
    }
    if (!key.example.empty()) {
        return fmt::format("write, for example, {} = {}", key.name, key.example);
    }
    return expected == expected_date ? fmt::format("write, for example, {} = 2026-10-17", key.name)
                                     : std::string{};
}

std::string nearest_key_hint(std::string_view key, const std::vector<std::string>& known) {
    if (const auto near = nearest(key, known)) {
        return fmt::format("did you mean \"{}\"?", *near);
    }
    return known.empty() ? "no key is known here" : "keys known here: " + joined(known, ", ");
}

std::optional<std::string> nearest_word(std::string_view written, std::span<const Word> words) {
    std::vector<std::string> spellings;
    std::vector<std::size_t> owners;
    for (std::size_t i = 0; i < words.size(); ++i) {
        spellings.push_back(words[i].word);
        owners.push_back(i);
        for (const auto& other : words[i].also) {
            spellings.push_back(other);
            owners.push_back(i);
        }
    }
    const auto near = nearest(written, spellings);
    if (!near) {
        return std::nullopt;
    }
    const auto position = std::ranges::find(spellings, *near) - spellings.begin();
    return words[owners[static_cast<std::size_t>(position)]].word;
}

std::optional<double> as_real(const Value& value) {
    if (const auto* real = std::get_if<double>(&value.content)) {
        return *real;
    }
    if (const auto* whole = std::get_if<std::int64_t>(&value.content)) {
        return static_cast<double>(*whole);
    }
    return std::nullopt;
}

} // namespace thawslip::toml

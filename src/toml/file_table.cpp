#include "toml/file_table.h"

#include "base/length_text.h"
#include "base/letters.h"
#include "base/list.h"
#include "base/nearest.h"
#include "base/one_line.h"
#include "base/printable.h"
#include "toml/faults.h"
#include "toml/type_hints.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

/// `servings`, `steps[2]`: the last part of a key path, which begins a message.
std::string subject(const KeyPath& key) {
    const auto dot = key.text().rfind('.');
    return dot == std::string::npos ? key.text() : key.text().substr(dot + 1);
}

} // namespace

std::optional<std::string> printable_line(Reader& reader, const Text& text, std::size_t most) {
    auto line = one_line(text.value, most);
    if (line) {
        return std::move(line).value();
    }
    const auto& fault = line.fault();
    reader.error_inside(text.key, fault.offset, subject(text.key) + " " + fault.message);
    return std::nullopt;
}

Table::Table(Reader& reader, KeyPath path, const Value& value)
    : reader_{&reader}, path_{std::move(path)}, value_{&value} {}

bool Table::has(const Key& key) const {
    return member(*value_, key.name) != nullptr;
}

const std::string* Table::text_at(const Key& key) const {
    const auto* value = member(*value_, key.name);
    return value != nullptr ? std::get_if<std::string>(&value->content) : nullptr;
}

std::vector<std::string> Table::keys() const {
    return mapped(std::get<Members>(value_->content).list, &Member::key);
}

const Value* Table::ask(const Key& key) {
    if (std::ranges::find(asked_, key.name) == asked_.end()) {
        asked_.emplace_back(key.name);
    }
    reader_->note_asked(path_, key.name);
    const auto* value = member(*value_, key.name);
    const bool readable = value != nullptr && !std::holds_alternative<Unreadable>(value->content);
    return readable ? value : nullptr;
}

void Table::require(const Key& key) {
    ask(key);
    if (has(key)) {
        return;
    }
    Hints hints;
    if (!key.example.empty()) {
        hints.push_back(fmt::format("write, for example, {} = {}", key.name, key.example));
    }
    reader_->error(path_of(key), missing_key(key.name, path_.text()), std::move(hints));
}

void Table::refuse_type(const Key& key, std::string_view expected, const Value& found,
                        Hints hints) {
    if (auto hint = type_hint(key, expected, found); !hint.empty()) {
        hints.push_back(std::move(hint));
    }
    reader_->error_at(found.place, path_of(key), wrong_type(key.name, expected, found),
                      std::move(hints));
}

std::optional<Text> Table::string(const Key& key) {
    const auto* value = ask_for<std::string>(key, expected_text);
    return value != nullptr
               ? std::optional{Text{std::get<std::string>(value->content), path_of(key)}}
               : std::nullopt;
}

std::optional<std::string> Table::line(const Key& key, std::size_t most) {
    const auto text = string(key);
    return text ? printable_line(*reader_, *text, most) : std::nullopt;
}

std::optional<std::int64_t> Table::integer(const Key& key, Range<std::int64_t> range) {
    const auto* value = ask_for<std::int64_t>(key, expected_integer);
    return value != nullptr ? within(*value, path_of(key), key.name,
                                     std::get<std::int64_t>(value->content), range)
                            : std::nullopt;
}

std::optional<double> Table::real(const Key& key, Range<double> range) {
    const auto* value = ask(key);
    if (value == nullptr) {
        return std::nullopt;
    }
    if (const auto number = as_real(*value)) {
        return within(*value, path_of(key), key.name, *number, range);
    }
    refuse_type(key, expected_real, *value);
    return std::nullopt;
}

std::optional<bool> Table::boolean(const Key& key) {
    const auto* value = ask_for<bool>(key, expected_boolean);
    return value != nullptr ? std::optional{std::get<bool>(value->content)} : std::nullopt;
}

std::optional<Date> Table::date(const Key& key) {
    const auto* value = ask_for<Date>(key, expected_date);
    return value != nullptr ? std::optional{std::get<Date>(value->content)} : std::nullopt;
}

std::optional<Length> Table::length(const Key& key, Range<Length> range) {
    const auto text = string(key);
    if (!text) {
        return std::nullopt;
    }
    const auto length = parse_length(text->value);
    if (!length) {
        reader_->error_inside(text->key, length.fault().offset,
                              fmt::format("{}: {}", key.name, length.fault().message));
        return std::nullopt;
    }
    if (length.value() < range.least || length.value() > range.most) {
        reader_->error(text->key,
                       fmt::format("{} must be from {} to {}, not {}", key.name,
                                   millimetres_text(range.least), millimetres_text(range.most),
                                   in_quotes(text->value)));
        return std::nullopt;
    }
    return length.value();
}

std::optional<std::size_t> Table::word(const Key& key, std::string_view what,
                                       std::span<const Word> words) {
    const auto text = string(key);
    return text ? position(*text, what, words) : std::nullopt;
}

std::vector<std::size_t> Table::words(const Key& key, std::size_t most, std::string_view what,
                                      std::span<const Word> words) {
    return mapped(strings(key, most),
                  [&](const Text& text) { return position(text, what, words).value_or(0); });
}

std::optional<std::size_t> Table::position(const Text& text, std::string_view what,
                                           std::span<const Word> words) {
    const auto written = lower(trimmed(text.value));
    std::vector<std::string> all;
    for (std::size_t i = 0; i < words.size(); ++i) {
        if (lower(words[i].word) == written) {
            return i;
        }
        all.push_back(words[i].word);
    }
    Hints hints;
    if (const auto near = nearest_word(written, words)) {
        hints.push_back(fmt::format("did you mean \"{}\"?", *near));
    }
    reader_->error(
        text.key,
        fmt::format("{} is not {}: expected {}", in_quotes(text.value), what, list_of(all)),
        std::move(hints));
    return std::nullopt;
}

void Table::refuse_moved(const Key& key, std::string_view now) {
    if (has(key)) {
        ask(key);
        reader_->error(path_of(key), fmt::format("{} is written otherwise now", key.name),
                       {fmt::format("write it as {}", now)});
    }
}

void Table::refuse_unknown() {
    for (const auto& each : std::get<Members>(value_->content).list) {
        if (std::ranges::find(asked_, each.key) != asked_.end()) {
            continue;
        }
        Hints hints;
        if (!reader_->is_full()) { // naming the nearest of a hundred thousand would take a while
            hints.push_back(nearest_key_hint(each.key, asked_));
        }
        reader_->error_at(each.key_place, path_.key(written_key(each.key)),
                          unknown_key(each.key, path_.text()), std::move(hints));
    }
}

} // namespace thawslip::toml

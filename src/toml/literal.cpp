#include "toml/literal.h"

#include "base/list.h"
#include "toml/faults.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

std::string date_literal(Date date) {
    return fmt::format("{:04}-{:02}-{:02}", static_cast<int>(date.year()),
                       static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
}

/// The shortest digits that are read back as the same number; never those of a whole number.
std::string real_literal(double number) {
    if (std::isnan(number)) {
        return "nan";
    }
    if (std::isinf(number)) {
        return number < 0 ? "-inf" : "inf";
    }
    auto digits = fmt::format("{}", number);
    return digits.find_first_of(".e") == std::string::npos ? digits + ".0" : digits;
}

struct Write {
    std::string operator()(const Members& members) const {
        const auto pair = [](const Member& member) {
            return key_literal(member.key) + " = " + literal_of(member.value);
        };
        return "{" + joined(members.list, ", ", pair) + "}";
    }
    std::string operator()(const Array& array) const {
        const auto literal = [](const Value& value) { return literal_of(value); };
        return "[" + joined(array.elements, ", ", literal) + "]";
    }
    std::string operator()(const std::string& text) const {
        return literal_of(std::string_view{text});
    }
    std::string operator()(std::int64_t number) const { return std::to_string(number); }
    std::string operator()(double number) const { return real_literal(number); }
    std::string operator()(bool flag) const { return flag ? "true" : "false"; }
    std::string operator()(Date date) const { return date_literal(date); }
    std::string operator()(const OtherTime&) const { return "\"\""; }
    std::string operator()(const Unreadable&) const { return "\"\""; }
};

bool are_same(const Members& one, const Members& other) {
    return one.list.size() == other.list.size() &&
           std::ranges::all_of(one.list, [&](const Member& member) {
               const auto found = std::ranges::find(other.list, member.key, &Member::key);
               return found != other.list.end() && is_same(member.value, found->value);
           });
}

bool are_same(const Array& one, const Array& other) {
    return std::ranges::equal(one.elements, other.elements, is_same);
}

template <class T>
bool are_same(const T& one, const T& other) {
    return one == other;
}
bool are_same(double one, double other) {
    return one == other || (std::isnan(one) && std::isnan(other));
}
bool are_same(const OtherTime& one, const OtherTime& other) {
    return one.kind == other.kind;
}
bool are_same(const Unreadable&, const Unreadable&) {
    return true;
}

} // namespace

std::string escaped(std::string_view text, bool keep_line_ends) {
    std::string safe;
    for (const char c : text) {
        const auto byte = static_cast<unsigned char>(c);
        if (c == '"' || c == '\\') {
            safe += '\\';
            safe += c;
        } else if (c == '\n') {
            safe += keep_line_ends ? "\n" : "\\n";
        } else if (byte < 0x20 || byte == 0x7F) {
            safe += fmt::format("\\u{:04X}", static_cast<unsigned>(byte));
        } else {
            safe += c;
        }
    }
    return safe;
}

std::string literal_of(std::string_view text) {
    return '"' + escaped(text, false) + '"';
}

std::string key_literal(std::string_view key) {
    const bool is_bare = !key.empty() && std::ranges::all_of(key, is_bare_letter);
    return is_bare ? std::string{key} : literal_of(key);
}

std::string literal_of(const Value& value) {
    return std::visit(Write{}, value.content);
}

bool is_same(const Value& one, const Value& other) {
    return std::visit(
        [&other](const auto& content) {
            using T = std::decay_t<decltype(content)>;
            const auto* same = std::get_if<T>(&other.content);
            return same != nullptr && are_same(content, *same);
        },
        one.content);
}

} // namespace thawslip::toml

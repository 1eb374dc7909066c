#include "toml/faults.h"

#include "base/letters.h"
#include "base/printable.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

std::string inside(std::string_view table_path) {
    return table_path.empty() ? "at the top of the file" : "in " + header_of(table_path);
}

struct Describe {
    std::string operator()(const Members&) const { return "a table"; }
    std::string operator()(const Array& array) const {
        return array.elements.empty() ? "an empty list" : "a list";
    }
    std::string operator()(const std::string& text) const { return "the text " + in_quotes(text); }
    std::string operator()(std::int64_t number) const {
        return fmt::format("the whole number {}", number);
    }
    std::string operator()(double number) const { return fmt::format("the number {}", number); }
    std::string operator()(bool truth) const { return truth ? "true" : "false"; }
    std::string operator()(const Date& date) const {
        return fmt::format("the date {:04}-{:02}-{:02}", static_cast<int>(date.year()),
                           static_cast<unsigned>(date.month()), static_cast<unsigned>(date.day()));
    }
    std::string operator()(Unreadable) const { return "something unreadable"; }
    std::string operator()(const OtherTime& time) const { return "a " + std::string{time.kind}; }
};

} // namespace

bool is_bare_letter(char c) {
    return is_letter_or_digit(c) || c == '_' || c == '-';
}

std::string written_key(std::string_view key) {
    const bool bare = !key.empty() && std::ranges::all_of(key, is_bare_letter);
    return bare && key.size() <= 40 ? std::string{key} : in_quotes(key);
}

std::string describe(const Value& value) {
    return std::visit(Describe{}, value.content);
}

std::string header_of(std::string_view path) {
    const bool listed = !path.empty() && path.back() == ']';
    std::string bare;
    bool inside = false;
    for (const char c : path) {
        inside = c == '[' || (inside && c != ']');
        if (!inside && c != ']') {
            bare += c;
        }
    }
    return listed ? "[[" + bare + "]]" : "[" + bare + "]";
}

std::string unknown_key(std::string_view key, std::string_view table_path) {
    return fmt::format("unknown key {} {}", in_quotes(key), inside(table_path));
}

std::string missing_key(std::string_view key, std::string_view table_path) {
    return fmt::format("{} is missing {}", in_quotes(key), inside(table_path));
}

std::string wrong_type(std::string_view subject, std::string_view expected, const Value& found) {
    return fmt::format("{} must be {}, not {}", subject, expected, describe(found));
}

std::string too_deep(std::size_t depth) {
    return fmt::format("nested too deep: at most {} levels are read", depth);
}

} // namespace thawslip::toml

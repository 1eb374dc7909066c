#include "toml/faults.h"

#include "base/character.h"
#include "base/utf8.h"

#include <algorithm>
#include <fmt/format.h>

namespace thawslip::toml {
namespace {

bool is_unsafe(char32_t c) {
    return is_control(c) || is_line_break(c) || turns_direction(c);
}

bool is_bare(std::string_view key) {
    return !key.empty() && std::ranges::all_of(key, [](char c) {
        return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
               c == '_' || c == '-';
    });
}

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

std::string printable(std::string_view text) {
    std::string safe;
    for (std::size_t offset = 0; offset < text.size();) {
        const auto bad = first_invalid_utf8(text.substr(offset));
        const auto end = bad ? offset + *bad : text.size();
        while (offset < end) {
            const char32_t c = next_code_point(text, offset);
            append_utf8(safe, is_unsafe(c) ? char32_t{0xFFFD} : c);
        }
        if (bad) {
            append_utf8(safe, 0xFFFD);
            ++offset;
        }
    }
    return safe;
}

std::string in_quotes(std::string_view text) {
    constexpr std::size_t most = 40;
    constexpr std::size_t most_bytes = most * 4 + 4;
    const auto points = to_utf32(printable(text.substr(0, most_bytes)));
    const bool cut = points.size() > most || text.size() > most_bytes;
    return "\"" + to_utf8(points.substr(0, most)) + (cut ? "…\"" : "\"");
}

std::string written_key(std::string_view key) {
    return is_bare(key) && key.size() <= 40 ? std::string{key} : in_quotes(key);
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

std::string too_large(std::string_view size, std::string_view limit) {
    return fmt::format("the file is too large: {}, at most {} are read", size, limit);
}

std::string too_deep(std::size_t depth) {
    return fmt::format("nested too deep: at most {} levels are read", depth);
}

} // namespace thawslip::toml

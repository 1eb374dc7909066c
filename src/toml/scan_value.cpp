#include "base/printable.h"
#include "base/utf8.h"
#include "toml/scalar.h"
#include "toml/scanner.h"
#include "toml/type_hints.h"

#include <fmt/format.h>

namespace thawslip::toml {
namespace {

constexpr const char* newer_toml = "TOML 1.1 allows it, TOML 1.0 does not";

std::string_view first_word(std::string_view words) {
    return words.substr(0, words.find_first_of(" \t"));
}

} // namespace

bool begins_again(std::string_view line) {
    const std::string_view open =
        line.starts_with("[[") ? "[[" : line.substr(0, line.starts_with('[') ? 1 : 0);
    line.remove_prefix(open.size());
    constexpr std::string_view letters =
        "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_. \t";
    const auto end = std::min(line.find_first_not_of(letters), line.size());
    const auto name = trimmed(line.substr(0, end));
    auto rest = line.substr(end);
    if (name.empty() || open.empty()) {
        return !name.empty() && rest.starts_with('=');
    }
    if (!rest.starts_with(open == "[[" ? "]]" : "]")) {
        return false;
    }
    rest = trimmed(rest.substr(open.size()));
    return (rest.empty() || rest.starts_with('#')) && !scalar_of(name);
}

Value Scanner::value(std::string_view key, In in) {
    const auto before = at_;
    skip_blanks();
    const auto begin = at_;
    Content content;
    if (at_quote()) {
        content = string(true);
    } else if (peek() == '[' || peek() == '{') {
        content = nested();
    } else {
        content = word(key, before, in);
    }
    return {std::move(content), {begin, at_}};
}

Content Scanner::nested() {
    if (nested_ == depth_) {
        refuse_depth();
        return Unreadable{};
    }
    ++nested_;
    auto content = peek() == '[' ? list() : braces();
    --nested_;
    return content;
}

Content Scanner::list() {
    const auto open = at_++;
    Array list;
    for (bool after_value = false; !list_ends(open);) {
        if (peek() == ',' && !after_value) {
            complain({at_, at_ + 1}, "a value is missing before the comma");
        }
        if (take(",")) {
            after_value = false;
            continue;
        }
        if (after_value) {
            miss_comma();
        }
        const auto before = noticed_;
        list.elements.push_back(value({}, In::Brackets));
        after_value = true;
        if (noticed_ != before && !began_again_) { // the comma may have gone with the value
            skip_blanks();
            take(",");
            after_value = false;
        }
    }
    return list;
}

bool Scanner::list_ends(std::size_t open) {
    if (began_again_) {
        return true;
    }
    const bool new_line = skip_space();
    began_again_ = ended() || (new_line && begins_again(words({at_, line_end()})));
    if (began_again_ || peek() == '}') {
        leave_open(open, ']');
        return true;
    }
    return take("]");
}

Content Scanner::braces() {
    const auto open = at_++;
    const auto table = tree_.add_loose(Tree::Kind::InBraces);
    auto comma = open;
    bool in_one_line = true;
    for (bool after_value = false; !braces_end(open, after_value, in_one_line);) {
        if (after_value && peek() != ',') {
            miss_comma();
        } else if (!after_value && peek() == ',') {
            complain({at_, at_ + 1}, "a key and its value are missing before the comma");
        }
        after_value = peek() != ',';
        if (after_value) {
            pair(table, In::Brackets);
        } else {
            comma = at_++;
        }
    }
    const auto after_comma = words({comma + 1, std::max(comma + 1, at_ - 1)});
    if (comma != open && text_[at_ - 1] == '}' && trimmed(after_comma).empty()) {
        complain({comma, comma + 1}, "a table in braces must not end with a comma", {newer_toml});
    }
    return std::get<Members>(tree_.take(table).content);
}

/// A table in braces may not go on in the next line, but it seems to where a key or its end comes.
bool Scanner::braces_end(std::size_t open, bool after_value, bool& in_one_line) {
    if (began_again_) {
        return true;
    }
    skip_blanks();
    const auto end = at_;
    if (at_line_end() || peek() == '#') {
        skip_space();
        began_again_ = ended() || (after_value && peek() != '}' && peek() != ',');
    }
    if (began_again_ || peek() == ']') {
        leave_open(open, '}');
        return true;
    }
    if (at_ != end && in_one_line) {
        complain({end, end + 1}, "a table in braces must be written in one line", {newer_toml});
        in_one_line = false;
    }
    return take("}");
}

/// A value without quotes, or text that lacks them, most of the time.
Content Scanner::word(std::string_view key, std::size_t after_equals, In in) {
    const auto ends = in == In::Line ? "#\r\n" : ",]}#\r\n";
    const auto place = trimmed_stretch(at_, end_of(at_, ends));
    const auto written = words(place);
    if (written.empty()) {
        complain({after_equals, after_equals}, in_quotes(key) + " has no value",
                 {fmt::format("write {} = and a value, or remove the line", printable(key))});
        return Unreadable{};
    }
    if (auto content = scalar_of(written)) {
        at_ = place.end;
        return std::move(*content);
    }
    if (in == In::Brackets && !has_mistake_at(at_) && comma_is_missing(written)) {
        at_ += first_word(written).size();
        return *scalar_of(first_word(written));
    }
    at_ = place.end;
    auto fault = explain_word(written, in == In::Line ? key : "");
    complain(place, std::move(fault.message),
             fault.hint.empty() ? Hints{} : Hints{std::move(fault.hint)});
    return Unreadable{};
}

/// `1 2`, `1 "a"` and `1 b = 2`, but not `1 pinch`.
bool Scanner::comma_is_missing(std::string_view stretch) const {
    const auto word = first_word(stretch);
    const auto rest = trimmed(stretch.substr(word.size()));
    const bool more = !rest.empty() && (rest.find_first_of("\"'[{=") != std::string_view::npos ||
                                        scalar_of(first_word(rest)));
    return more && scalar_of(word);
}

void Scanner::miss_comma() {
    constexpr std::size_t most = 40;
    if (has_mistake_at(at_)) { // so that a long line is not looked through again and again
        ++noticed_;
        return;
    }
    const auto place = trimmed_stretch(at_, end_of(at_, ",]}#\r\n"));
    const auto entry = words(place);
    const bool whole = at_quote() && entry.size() <= most;
    complain(place, "a comma is missing before " + (whole ? printable(entry) : in_quotes(entry)));
}

void Scanner::leave_open(std::size_t open, char closing) {
    auto where = ended() ? "at its end" : fmt::format("before the {}", text_[at_]);
    if (began_again_ && !ended()) {
        where = fmt::format("before line {}, which begins something else",
                            std::ranges::count(text_.substr(0, at_), '\n') + 1);
    }
    complain({open, open + 1}, "the bracket that begins here is not closed",
             {fmt::format("put {} {}", closing, where)});
}

} // namespace thawslip::toml

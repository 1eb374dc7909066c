#include "toml/scan.h"

#include "base/printable.h"
#include "base/utf8.h"
#include "toml/faults.h"
#include "toml/scanner.h"
#include "toml/type_hints.h"

#include <fmt/format.h>

namespace thawslip::toml {
namespace {

/// Where a colon or a blank parts a key and its value, with the sign that should.
Hints pair_hints(std::string_view words) {
    const auto end = words.find_first_of(": \t");
    const auto value = end == std::string_view::npos ? end : words.find_first_not_of(": \t", end);
    const bool has_sign = words.find('=') != std::string_view::npos;
    return value == std::string_view::npos || has_sign
               ? Hints{}
               : Hints{fmt::format("write {} = {}", words.substr(0, end), words.substr(value))};
}

} // namespace

Scan scan(std::string_view text, std::size_t depth) {
    return Scanner{text, depth}.scan();
}

Scan Scanner::scan() {
    while (!ended()) {
        statement();
    }
    found_.root = tree_.take(Tree::root);
    std::ranges::stable_sort(found_.mistakes, {},
                             [](const Mistake& each) { return each.where.begin; });
    return std::move(found_);
}

void Scanner::statement() {
    skip_space();
    if (ended()) {
        return;
    }
    if (peek() == '[') {
        header();
    } else {
        pair(table_, In::Line);
    }
}

void Scanner::header() {
    const auto begin = at_++;
    const bool listed = take("[");
    const auto names = key();
    const bool closed = names && take(listed ? "]]" : "]");
    const Stretch place{begin, at_};
    skip_blanks();
    if (!names || !closed || peek() == ']') {
        const auto whole = trimmed_stretch(begin, line_end());
        complain(whole, in_quotes(words(whole)) + " is not a table's header",
                 {"write [name] or, for one of several, [[name]]"});
        found_.lost = true;
    } else if (!at_line_end() && peek() != '#') {
        complain(trimmed_stretch(at_, line_end()), "a table's header stands alone in its line",
                 {"begin a new line after the closing bracket"});
        found_.lost = true;
    }
    at_ = peek() == '#' ? at_ : line_end();
    if (names) {
        open_table(*names, place, listed);
    } else {
        table_ = tree_.add_loose(Tree::Kind::Headed);
    }
}

void Scanner::open_table(const std::vector<Name>& names, Stretch header, bool listed) {
    const auto place = tree_.open(names, header, listed);
    if (place) {
        table_ = place.value();
        return;
    }
    refuse_table(header, place.fault(), place.fault().name + 1 < names.size(), listed);
    found_.lost = true;
    table_ = tree_.add_loose(Tree::Kind::Headed);
}

void Scanner::refuse_table(Stretch header, Tree::Obstacle obstacle, bool on_its_way, bool listed) {
    const auto written = printable(words(header));
    const bool is_value = obstacle.kind == Tree::Kind::Value || obstacle.kind == Tree::Kind::List;
    if (on_its_way && obstacle.kind == Tree::Kind::InBraces) {
        complain(header, written + " adds to a table that is written in braces",
                 {"write all its keys inside the braces, or none there"});
    } else if (on_its_way || listed || is_value) {
        complain(header, written + " is already there as something else");
    } else {
        complain(header, written + " stands here a second time",
                 {fmt::format("write all its keys below the first; where several may stand, each "
                              "begins with [{}]",
                              written)});
    }
}

void Scanner::pair(Tree::Id table, In in) {
    const auto begin = at_;
    const auto names = is_bare_letter(peek()) || at_quote() ? key() : std::nullopt;
    if (!names || !take("=")) {
        refuse_pair(begin, in);
        return;
    }
    const auto written = trimmed_stretch(begin, at_ - 1);
    const auto known = found_.mistakes.size();
    const auto place = tree_.add_pair(table, *names);
    if (!place) {
        refuse_key(*names, written, place.fault());
    }
    const auto before = noticed_;
    auto read = value(words(written), in);
    if (in == In::Line) {
        end_line(read, noticed_ != before);
        after_spoilt_ = noticed_ != before;
    }
    if (noticed_ != before) {
        read.content = Unreadable{};
    }
    if (!place) {
        return;
    }
    tree_.set(place.value(), std::move(read));
    for (auto i = known; in == In::Line && !found_.lost && i < found_.mistakes.size(); ++i) {
        found_.mistakes[i].key = tree_.path_of(place.value());
    }
}

/// What is neither a header nor `key = value`.
void Scanner::refuse_pair(std::size_t begin, In in) {
    const bool odd = at_ == begin || static_cast<unsigned char>(peek()) >= 0x80;
    at_ = end_of(begin, in == In::Line ? "\r\n" : ",}\r\n");
    const auto whole = trimmed_stretch(begin, at_);
    const bool goes_on = std::string_view{"\"']}"}.find(text_[begin]) != std::string_view::npos;
    if (in == In::Line && after_spoilt_ && goes_on) {
        return; // more of a list, say, whose bracket is missing
    }
    found_.lost = found_.lost || in == In::Line;
    after_spoilt_ = true;
    if (text_[begin] == '=') {
        complain({begin, begin + 1}, "a key is missing before the =");
        return;
    }
    complain(whole, in_quotes(words(whole)) + " is not key = value",
             odd ? Hints{"a key is made of letters A to Z, digits, - and _; any other stands in "
                         "double quotes"}
                 : pair_hints(words(whole)));
}

void Scanner::refuse_key(const std::vector<Name>& names, Stretch key, Tree::Obstacle obstacle) {
    const auto& name = names[obstacle.name];
    if (obstacle.name + 1 == names.size()) {
        complain(key, in_quotes(words(key)) + " is set a second time",
                 {"one table holds each key once"});
    } else if (obstacle.kind == Tree::Kind::InBraces) {
        complain(name.place, in_quotes(words(key)) + " adds to a table that is written in braces",
                 {"write all its keys inside the braces, or none there"});
    } else {
        complain(name.place, in_quotes(name.name) + " is already there as something else");
    }
}

/// After a value nothing but a remark may follow in its line.
void Scanner::end_line(const Value& value, bool spoilt) {
    if (began_again_) {
        began_again_ = false;
        return;
    }
    skip_blanks();
    if (at_line_end() || peek() == '#') {
        return;
    }
    const auto rest = trimmed_stretch(at_, line_end());
    at_ = line_end();
    if (!spoilt) {
        refuse_more(rest, std::holds_alternative<std::string>(value.content)
                              ? text_[value.place.end - 1]
                              : '\0');
    }
}

/// \param quote that closed a text before; else NUL
void Scanner::refuse_more(Stretch rest, char quote) {
    const auto more = words(rest);
    if (more == ",") {
        complain(rest, "\",\" stands where the line should end", {"a line ends without a comma"});
    } else if (quote != '\0' && more.front() != ',') {
        complain(rest, "the text has ended, but more follows in its line",
                 {quote == '"' ? "a double quote inside a text is written \\\""
                               : "put a text that holds a single quote in double quotes"});
    } else {
        complain(rest, in_quotes(more) + " stands where the line should end",
                 more.front() == ']'
                     ? Hints{}
                     : Hints{"several values stand in brackets with commas between; a remark "
                             "begins with #; each key has a line of its own"});
    }
}

std::optional<std::vector<Name>> Scanner::key() {
    std::vector<Name> names;
    do {
        if (names.size() == depth_) {
            --at_;
            refuse_depth();
            return std::nullopt;
        }
        skip_blanks();
        const auto begin = at_;
        std::string name;
        if (at_quote()) {
            name = string(false);
        } else if (!is_bare_letter(peek())) {
            name_missing();
            return std::nullopt;
        } else {
            at_ = static_cast<std::size_t>(
                std::find_if_not(text_.begin() + static_cast<std::ptrdiff_t>(at_), text_.end(),
                                 is_bare_letter) -
                text_.begin());
            name = words({begin, at_});
        }
        names.push_back({std::move(name), {begin, at_}});
        skip_blanks();
    } while (take("."));
    return names;
}

void Scanner::name_missing() {
    auto end = at_;
    std::string found = "the line ends";
    if (!at_line_end()) {
        next_code_point(text_, end);
        found = in_quotes(words({at_, end})) + " stands";
    }
    complain({at_, end}, found + " where a name was expected");
}

bool Scanner::take(std::string_view word) {
    const bool there = !ended() && text_.substr(at_, word.size()) == word;
    at_ += there ? word.size() : 0;
    return there;
}

void Scanner::skip_blanks() {
    while (peek() == ' ' || peek() == '\t') {
        ++at_;
    }
}

bool Scanner::skip_space() {
    const auto begin = at_;
    while (!ended()) {
        skip_blanks();
        if (peek() == '#') {
            remark();
        } else if (at_line_end() && !ended()) {
            ++at_;
        } else {
            break;
        }
    }
    return words({begin, at_}).find('\n') != std::string_view::npos;
}

void Scanner::remark() {
    for (; !at_line_end(); at_ = plain_end(at_ + 1)) {
        refuse_control();
    }
}

std::size_t Scanner::end_of(std::size_t begin, std::string_view ends) const {
    return std::min(text_.find_first_of(ends, begin), text_.size());
}

Stretch Scanner::trimmed_stretch(std::size_t begin, std::size_t end) const {
    const auto inner = trimmed(words({begin, end}));
    const auto first =
        inner.empty() ? begin : static_cast<std::size_t>(inner.data() - text_.data());
    return {first, first + inner.size()};
}

bool Scanner::has_mistake_at(std::size_t place) const {
    return std::ranges::any_of(
        lines_, [place](const Stretch& line) { return line.begin <= place && place <= line.end; });
}

/// Reports the first mistake of a line: the others are most often its consequences.
void Scanner::complain(Stretch where, std::string message, Hints hints) {
    constexpr std::size_t most = 20;
    ++noticed_;
    if (given_up_ || has_mistake_at(where.begin)) {
        return;
    }
    lines_.push_back({text_.substr(0, where.begin).rfind('\n') + 1, // npos + 1 is 0
                      end_of(where.begin, "\n")});
    found_.mistakes.push_back({where, std::move(message), std::move(hints), {}});
    if (found_.mistakes.size() > most) {
        given_up_ = found_.lost = true;
    }
}

/// Nothing is read beyond: a hostile file shall not fill the stack.
void Scanner::refuse_depth() {
    complain({at_, at_ + 1}, too_deep(depth_));
    given_up_ = found_.lost = true;
}

} // namespace thawslip::toml

#pragma once

#include "toml/scan.h"
#include "toml/tree.h"

#include <algorithm>
#include <optional>

/// Nothing outside `scan*.cpp` needs this.
namespace thawslip::toml {

using Hints = std::vector<std::string>;

/// A place in a text that moves on, and what was read on the way.
class Scanner {
public:
    Scanner(std::string_view text, std::size_t depth) : text_{text}, depth_{depth} {}

    Scan scan();

private:
    enum class In { Line, Brackets }; ///< what ends a word: its line alone, or a comma and brackets

    // Lines: scan.cpp.
    void statement();
    void header();
    void open_table(const std::vector<Name>& names, Stretch header, bool listed);
    void refuse_table(Stretch header, Tree::Obstacle obstacle, bool on_its_way, bool listed);
    void pair(Tree::Id table, In in);
    void refuse_pair(std::size_t begin, In in);
    void refuse_key(const std::vector<Name>& names, Stretch key, Tree::Obstacle obstacle);
    void end_line(const Value& value, bool spoilt);
    void refuse_more(Stretch rest, char quote);
    std::optional<std::vector<Name>> key();
    void name_missing();

    // Values: scan_value.cpp.
    Value value(std::string_view key, In in);
    Content nested();
    Content list();
    bool list_ends(std::size_t open);
    Content braces();
    bool braces_end(std::size_t open, bool after_value, bool& in_one_line);
    Content word(std::string_view key, std::size_t after_equals, In in);
    bool comma_is_missing(std::string_view stretch) const;
    void miss_comma();
    void leave_open(std::size_t open, char closing);

    // Texts: scan_text.cpp.
    std::string string(bool may_have_lines);
    void escape(std::string& text, bool has_lines);
    void code_point(std::string& text, std::size_t backslash, std::size_t digits);
    bool quotes_end(std::string& text, char quote);
    bool line_end_in_text(std::string& text);
    void refuse_control();
    std::size_t plain_end(std::size_t begin) const;
    void leave_text_open(std::size_t open, std::string_view closing);

    // The place, and what stands there: scan.cpp.
    bool ended() const { return given_up_ || at_ >= text_.size(); }
    char peek() const { return ended() ? '\n' : text_[at_]; }
    bool at_line_end() const { return peek() == '\n' || peek() == '\r'; }
    bool at_quote() const { return peek() == '"' || peek() == '\''; }
    bool take(std::string_view word);
    void skip_blanks();
    bool skip_space(); ///< blanks, line ends and remarks; whether it went past a line end
    void remark();
    std::size_t end_of(std::size_t begin, std::string_view ends) const;
    std::size_t line_end() const { return end_of(at_, "\r\n"); }
    Stretch trimmed_stretch(std::size_t begin, std::size_t end) const;
    std::string_view words(Stretch stretch) const {
        return text_.substr(stretch.begin, stretch.end - stretch.begin);
    }
    void complain(Stretch where, std::string message, Hints hints = {});
    void refuse_depth();
    bool has_mistake_at(std::size_t place) const;

    std::string_view text_;
    std::size_t depth_;
    std::size_t at_ = 0;
    std::size_t nested_ = 0;
    std::size_t noticed_ = 0;   ///< mistakes, with those that are not reported
    bool began_again_ = false;  ///< what was left open is given up; a new line begins here
    bool after_spoilt_ = false; ///< the key before, or its value, has a mistake
    bool given_up_ = false;
    Tree tree_;
    Tree::Id table_ = Tree::root; ///< whose keys stand here
    std::vector<Stretch> lines_;  ///< of the mistakes
    Scan found_;
};

/// Whether a line reads like `key = …` or `[header]`, and not like more of a list.
bool begins_again(std::string_view line);

} // namespace thawslip::toml

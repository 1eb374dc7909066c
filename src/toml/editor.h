#pragma once

#include "base/result.h"
#include "toml/edit.h"
#include "toml/outline.h"

#include <optional>
#include <string>
#include <string_view>
#include <vector>

/// Nothing outside `edit*.cpp` needs this.
namespace thawslip::toml {

/// What is to be changed in one text, all of it by the places before; or why nothing can be.
using Changes = Result<std::vector<Change>, std::string>;

/// A key, or a position from 1 in a list.
struct Step {
    std::string key;
    std::size_t position = 0; ///< 0: a key
};

/// The steps of a key path; nothing where it is none.
std::optional<std::vector<Step>> steps_of(std::string_view path);

/// What a path leads to, as far as there is something.
struct Way {
    std::vector<Step> steps;
    std::vector<Spot> spots; ///< the whole file, and behind each step that led on

    std::size_t known() const { return spots.size() - 1; }
    bool is_whole() const { return known() == steps.size(); }
    const Spot& end() const { return spots.back(); }
    /// Whether what it leads to stands in braces or brackets, so that lines are not its own.
    bool is_enclosed() const;
    /// The names of the first steps as a header has them: "package.thaw".
    std::string names(std::size_t count) const;
};

/// How keys stand in their lines.
struct Manner {
    std::string indent;
    std::size_t column = 0; ///< of the equals signs, from the key on; 0: each stands for itself
    std::string before = " ";
    std::string after = " ";
};

/// One edit of one text.
class Editor {
public:
    Editor(std::string_view text, const Value& root)
        : text_{text}, root_{root}, outline_{outline_of(root, text)},
          line_end_{text.find("\r\n") == std::string_view::npos ? "\n" : "\r\n"} {}

    Changes changes(const Edit& edit) const;

private:
    // Keys and values: edit_keys.cpp.
    Changes set(const Way& way, const Value& value) const;
    Changes replace(const Way& way, const Value& value) const;
    Changes add_key(const Way& way, const std::string& key, const Value& value) const;
    Changes add_in_braces(const Value& table, const std::string& pair) const;
    Changes add_dotted(const Way& way, const std::string& key, const Value& value) const;
    Changes add_line(const Way& way, const std::string& key, const Value& value) const;
    Changes take_out(const Way& way) const;
    Changes take_out_of_braces(const Value& table, const Member& member) const;
    std::string literal_in_line(const Value& value, std::size_t column) const;
    std::string pair_line(const Manner& manner, const std::string& key, const Value& value) const;
    Manner manner_of(std::size_t first_line, std::size_t last_line) const;
    const Section* section_of(const Value& table) const;

    // Lists in brackets: edit_list.cpp.
    Changes change_list(const Value& list, const std::vector<Value>& wanted) const;
    std::vector<Change> insert_behind(const Value& list, std::size_t element,
                                      const std::vector<Value>& more) const;
    std::vector<Change> cut_elements(const Value& list, std::size_t first, std::size_t end) const;
    std::size_t behind_comma(std::size_t at, bool& has_comma) const;

    // Tables with headers: edit_blocks.cpp.
    Changes add_table(const Way& way, const std::string& key, const Value& value) const;
    Changes add_element(const Way& way, const Value& value) const;
    Changes remove(const Way& way) const;
    Changes copy(const Way& way) const;
    Changes move(const Way& way, int by) const;
    /// Sections of a table and of those below it, by their places in the outline.
    std::vector<std::size_t> sections_below(const Value& table) const;
    /// The lines of those, where no other section stands between them.
    struct Range {
        std::size_t first = 0;
        std::size_t last = 0;
    };
    std::vector<Range> ranges_of(const std::vector<std::size_t>& sections) const;
    Change without(Range range) const;
    std::string block(const std::string& names, bool is_listed, const Members& members,
                      const Manner& manner) const;
    Change behind_line(std::size_t line, const std::string& block) const;
    std::string_view words(std::size_t begin, std::size_t end) const {
        return text_.substr(begin, end - begin);
    }

    std::string_view text_;
    const Value& root_;
    Outline outline_;
    std::string line_end_;
};

} // namespace thawslip::toml

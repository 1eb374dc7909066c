#pragma once

#include "toml/value.h"

#include <string>
#include <string_view>
#include <vector>

/// How the values of a text are written there: what editing needs, and nothing else does.
namespace thawslip::toml {

/// How a value is written.
enum class Form {
    Pair,    ///< behind its key; tables in braces and lists in brackets too
    Element, ///< in a list in brackets
    Headed,  ///< a table with a header, an element of a list of such tables, or the whole file
    Implied, ///< a table that only headers of those below it name
    Dotted,  ///< a table that dotted keys make
    List,    ///< of tables with headers
};

bool is_table(const Value& value);
bool is_list_of_tables(const Value& value); ///< with one at least

/// A value, and the member that it is of; nullptr for elements and the whole file.
struct Spot {
    const Value* value = nullptr;
    const Member* member = nullptr;
    Form form = Form::Headed;
};

/// The form of a member's value.
Form form_of(const Member& member, std::string_view text);
/// The form of an element of a list.
Form form_of_element(const Value& element, std::string_view text);

enum class LineKind { Blank, Remark, Header, Pair, More };

/// A line of a text, without its end. `More` goes on with a value, or is nothing that is known.
struct Line {
    std::size_t begin = 0;
    std::size_t end = 0;
    LineKind kind = LineKind::Blank;
};

/// What stands below one header: lines from the remarks directly above it to the last that is its.
struct Section {
    std::size_t header = 0;     ///< its first byte
    std::size_t first_line = 0; ///< with the remarks above
    std::size_t header_line = 0;
    std::size_t last_pair =
        0; ///< the last line of a key of its own; the header's where it has none
    std::size_t last_line = 0;    ///< with keys that were turned into remarks
    const Value* table = nullptr; ///< whose keys stand there
};

/// The lines of a text and its sections, in its order.
struct Outline {
    std::vector<Line> lines;
    std::vector<Section> sections;

    std::size_t line_at(std::size_t offset) const;
    std::size_t first_of_next(std::size_t section) const; ///< the line where the next one begins
};

Outline outline_of(const Value& root, std::string_view text);

} // namespace thawslip::toml

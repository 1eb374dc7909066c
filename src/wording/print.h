#pragma once

#include "base/key_path.h"

#include <memory>
#include <string>
#include <string_view>
#include <vector>

namespace thawslip::wording {

enum class Emphasis { Plain, Strong };

/// Words of one emphasis. UTF-8, NFC, no line breaks.
struct Span {
    std::string text;
    Emphasis emphasis = Emphasis::Plain;
    friend bool operator==(const Span&, const Span&) = default;
};

/// What stands before a paragraph.
enum class Marker { None, TickBox, Number };

/// What a paragraph is to those that follow it in its field.
enum class Role {
    Text,
    Heading,     ///< opens a section: never the last on a page, said again where one runs on
    ColumnHeads, ///< what the columns of the rows below are: the same
};

/// Which of the print's languages a paragraph speaks. The second says what the first before it
/// says: a layout sets it below or beside that, and never parts the two.
enum class Voice { First, Second };

/// Words with an optional label that the layout may run in, hang in a column or put above: "Thaw",
/// "Last 10 min". Where the words themselves are strong, the label is the quiet one.
struct Paragraph {
    Marker marker = Marker::None;
    int number = 0;    ///< for Marker::Number
    std::string label; ///< may be empty
    std::vector<Span> spans;
    Role role = Role::Text;
    Voice voice = Voice::First;
    bool critical = false;      ///< must not be overlooked: a layout may set it apart
    bool is_again = false;      ///< a heading that is said again, and says so
    bool with_previous = false; ///< where a print runs on, it stands with the paragraph before it

    /// A row of a table: what stands in each of its columns, and no words of the row's own. An
    /// area that is no table sets them one after the other.
    std::vector<Paragraph> cells = {};

    /// Boxes to tick, one before each of these: "1", "2"… They stand below the words, side by side,
    /// as many in a line as there is room for.
    std::vector<std::string> boxes = {};

    /// What stands below words and boxes, smaller: what is said of a dish below its name. Of a row
    /// it stands below all cells, as wide as they are together.
    std::vector<Paragraph> below = {};
    friend bool operator==(const Paragraph&, const Paragraph&) = default;
};

/// What a layout's area can take by name: "dish", "made", "thaw", "finish"…
struct Field {
    std::string name;
    std::vector<Paragraph> paragraphs; ///< none: the field has nothing to say and takes no room
    KeyPath where;                     ///< what in the description it comes from

    /// The same said shorter, and shorter again, for where there is no room: each says all that a
    /// cook must know there, or where it is said.
    std::vector<std::vector<Paragraph>> shorter = {};

    /// What it says in its `form`: 0 in full, 1 the first of the shorter; beyond the last, the
    /// last.
    const std::vector<Paragraph>& said(std::size_t form) const;
};

enum class Kind { BagLabel, FinishingCard, CookDayCard, DoorList, DaySheet, PlanSheet };

/// A heading as it is said again where what it heads runs on. \param phrase "{0}, continued";
/// empty: as it is
Paragraph said_again(Paragraph heading, std::string_view phrase);

struct TimeChart; // time_chart.h

/// Everything one label or card says, in the reader's language, before anything is placed.
struct Print {
    Kind kind = Kind::BagLabel;
    std::string dish;   ///< for messages
    std::string bag_id; ///< empty on a print that serves several bags
    std::vector<Field> fields;
    bool has_code = false; ///< whoever prints it adds a code: its text belongs to another layer
    /// Fields as they are said where the code has no room for what is added and how it is cooked.
    std::vector<Field> if_code_is_cut = {};
    std::string page_phrase;             ///< "Card {0} of {1}", for a print that may run on
    std::string second_page_phrase = {}; ///< the same in the second language; empty: none
    std::string more_phrase = {};        ///< "More on card {0}", on each card but the last
    std::string second_more_phrase = {}; ///< as `second_page_phrase`
    std::string continued_phrase = {};   ///< "{0}, continued", for a heading said again
    KeyPath where;
    std::shared_ptr<const TimeChart> chart = nullptr; ///< of a plan sheet; it never changes

    /// The field called `name`; nullptr when this print has none.
    const Field* field(std::string_view name) const;
};

} // namespace thawslip::wording

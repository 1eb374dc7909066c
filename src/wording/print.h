#pragma once

#include "base/key_path.h"

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

/// Words with an optional label that the layout may run in, hang in a column or put above: "Thaw",
/// "Last 10 min". Where the words themselves are strong, the label is the quiet one.
struct Paragraph {
    Marker marker = Marker::None;
    int number = 0;    ///< for Marker::Number
    std::string label; ///< may be empty
    std::vector<Span> spans;
    friend bool operator==(const Paragraph&, const Paragraph&) = default;
};

/// Replaces {0}, {1}… in `phrase` by `values`; a number beyond the values stays as it is written.
std::string fill(std::string_view phrase, const std::vector<std::string>& values);

/// What a layout's area can take by name: "dish", "made", "thaw", "finish"…
struct Field {
    std::string name;
    std::vector<Paragraph> paragraphs; ///< none: the field has nothing to say and takes no room
    KeyPath where;                     ///< what in the description it comes from
};

enum class Kind { BagLabel, FinishingCard, CookDayCard, DoorList, DaySheet };

/// Everything one label or card says, in the reader's language, before anything is placed.
struct Print {
    Kind kind = Kind::BagLabel;
    std::string dish;   ///< for messages
    std::string bag_id; ///< empty on a print that serves several bags
    std::vector<Field> fields;
    bool has_code = false;   ///< whoever prints it adds a code: its text belongs to another layer
    std::string page_phrase; ///< "Card {0} of {1}", for a print that may run on
    KeyPath where;

    /// The field called `name`; nullptr when this print has none.
    const Field* field(std::string_view name) const;
};

} // namespace thawslip::wording

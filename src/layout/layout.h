#pragma once

#include "base/geometry.h"
#include "typeset/face.h"
#include "wording/print.h"

#include <optional>
#include <string>
#include <vector>

namespace thawslip::layout {

/// How wide a column or how high a row is. After W3C CSS Grid Layout Module Level 1, 7.2:
/// a fixed length, a percentage of the whole, the size of the content, or a share of what is left.
struct Track {
    enum class Kind { Fixed, Percent, Content, Share };
    Kind kind = Kind::Content;
    Length length;       ///< for Fixed
    double amount = 1.0; ///< percent, or number of shares
    friend bool operator==(const Track&, const Track&) = default;
};

/// Type sizes by what a ruler and the law measure: the height of a lower-case x.
/// An area's type is never below `smallest`, stays at `comfortable` or above as long as something
/// optional can be left out instead, and never grows past `largest`.
struct XHeights {
    Length smallest;
    Length comfortable;
    Length largest;
};

enum class Align { Left, Centre, Right };
enum class Stand { Top, Middle, Bottom };

/// Whether a paragraph's label ("Last 10 min") opens its first line, hangs in a column, or stands
/// small on a line above.
enum class LabelPlace { RunIn, Column, Above };

/// How large a label above is, in sizes of the words below it.
inline constexpr double above_size = 0.75;

/// Whether an area's fields follow each other as paragraphs or on one line, with dots between.
enum class Join { Paragraphs, Line };

/// Extra space between paragraphs, in leadings, where a layout does not say.
inline constexpr double usual_space = 0.18;

/// The space between the columns of a table, in em.
inline constexpr double table_gap = 1.1;

/// How much larger than its text an area's headings are, where a layout does not say.
inline constexpr double usual_heading_size = 1.2;

/// How large what is said again in a second language is, in sizes of the text above it, where
/// that is not below the least x-height.
inline constexpr double second_size = 0.88;

enum class AreaKind { Text, Code, Write };

/// A named rectangle of a layout's picture and what stands in it.
struct Area {
    std::string name;
    AreaKind kind = AreaKind::Text;
    int row = 0; ///< top row and left column, from 0
    int column = 0;
    int rows = 1; ///< how many it spans
    int columns = 1;
    std::vector<std::string> words; ///< names of wording fields, in order
    typeset::Weight weight = typeset::Weight::Regular;
    XHeights x_height;
    double leading = 1.25; ///< from baseline to baseline, in type sizes
    Align align = Align::Left;
    Stand stand = Stand::Top;
    LabelPlace labels = LabelPlace::RunIn;
    Join join = Join::Paragraphs;
    std::vector<Track> table;   ///< how wide the cells of rows are; empty: the area is no table
    bool columns_flow = false;  ///< each column of the table runs on by itself, whatever the rows
    Length row_rule;            ///< thickness of the line under each row; 0: none
    double space = usual_space; ///< between paragraphs, in leadings
    double heading_size = usual_heading_size; ///< of headings, in sizes of the text
    int leave = 0;          ///< leaves in this order when space is short; 0: never
    bool continues = false; ///< may run on to a second card
    bool repeats = false;   ///< stands on the second card too
};

/// A line drawn in the gap under an area, as long as the area is wide.
struct RuleUnder {
    std::string area;
    Length thickness;
};

/// How one kind of print is laid out: a picture of areas, and what stands in each.
struct Layout {
    std::string name;
    wording::Kind kind = wording::Kind::BagLabel;
    double narrowest = 0.0; ///< ratio width : height of the cells it is drawn for, at least…
    double widest = 100.0;  ///< …and at most
    Length lowest;          ///< height of the cells it is drawn for, at least…
    Length highest = Length::millimetres(10'000); ///< …and below
    std::vector<Track> columns;
    std::vector<Track> rows;
    Length column_gap;
    Length row_gap;          ///< at least…
    Length most_row_gap;     ///< …and where there is room, at most
    std::vector<Area> areas; ///< in reading order of their top left corners
    std::vector<RuleUnder> rules;

    /// nullptr when there is none of that name.
    const Area* area(std::string_view name) const;
};

/// Words that no print may leave out, whatever a layout says.
bool must_stay(std::string_view field);

/// The least x-height that may be printed: Regulation (EU) 1169/2011, Article 13(2).
inline constexpr Length least_x_height = Length::millimetres(1.2);

} // namespace thawslip::layout

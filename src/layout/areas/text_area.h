#pragma once

#include "layout/align.h"
#include "layout/areas/content.h"
#include "layout/areas/extent.h"
#include "layout/tracks.h"
#include "typeset/face.h"

#include <string>
#include <vector>

namespace thawslip::layout {

/// Type sizes by what a ruler and the law measure: the height of a lower-case x.
/// An area's type is never below `smallest`, stays at `comfortable` or above as long as something
/// optional can be left out instead, and never grows past `largest`.
struct XHeights {
    Length smallest;
    Length comfortable;
    Length largest;
};

/// The least x-height that may be printed: Regulation (EU) 1169/2011, Article 13(2).
inline constexpr Length least_x_height = Length::millimetres(1.2);

/// Whether a paragraph's label ("Last 10 min") opens its first line, hangs in a column behind the
/// markers, stands small on a line above, or is a stop on a rail before the markers.
enum class LabelPlace { RunIn, Column, Above, Rail };

/// Whether the second language stands below the first, or beside it where the area has the width.
enum class SecondPlace { Below, Beside };

/// How wide an area is at least for two languages to stand in it side by side: as the areas of
/// cards from 120 mm are, beside a code.
inline constexpr Length least_width_beside = Length::millimetres(90);

/// How large a label above is, in sizes of the words below it.
inline constexpr double above_size = 0.75;

/// Whether an area's fields follow each other as paragraphs or on one line, with dots between.
enum class Join { Paragraphs, Line };

/// What is drawn around an area's words: nothing, a line, or a black field that they stand white
/// in.
enum class Border { None, Frame, Reversed };

/// Which prints have it: all, or those on which the area says something critical.
enum class BorderOn { All, Critical };

/// Extra space between paragraphs, in leadings, where a layout does not say.
inline constexpr double usual_space = 0.18;

/// How much larger than its text an area's headings are, where a layout does not say.
inline constexpr double usual_heading_size = 1.2;

/// How large what is said again in a second language is, in sizes of the text above it, where
/// that is not below the least x-height.
inline constexpr double second_size = 0.88;

/// How large what stands below the words of a cell is, in sizes of those, where that is not below
/// the least x-height.
inline constexpr double below_size = 0.75;

/// Extra space above a heading that is not the first, in leadings, where a layout does not say.
inline constexpr double usual_heading_space = 0.45;

/// Words: fields of a print, as paragraphs, on a line, or as the rows of a table.
struct TextArea {
    std::vector<std::string> words; ///< names of wording fields, in order
    typeset::Weight weight = typeset::Weight::Regular;
    XHeights x_height;
    double leading = 1.25; ///< from baseline to baseline, in type sizes
    Align align = Align::Left;
    LabelPlace labels = LabelPlace::RunIn;
    Join join = Join::Paragraphs;
    SecondPlace second = SecondPlace::Below;
    std::vector<Track> table;       ///< how wide the cells of rows are; empty: the area is no table
    std::vector<Align> table_align; ///< of the cells of each column; empty: as `align` says
    int merge = 0; ///< in so many columns from the left, what the row above says is left out
    bool columns_flow = false;  ///< each column of the table runs on by itself, whatever the rows
    Length row_rule;            ///< thickness of the line under each row; 0: none
    double space = usual_space; ///< between paragraphs, in leadings
    double heading_size = usual_heading_size;   ///< of headings, in sizes of the text
    double heading_space = usual_heading_space; ///< above a heading, in leadings
    Length heading_rule;      ///< thickness of the line under each heading; 0: none
    Length strips;            ///< the least width of strips side by side; 0: there is one
    std::size_t group = 0;    ///< which of the layout's groups it is sized with
    int drop = 0;             ///< dropped in this order when space is short; 0: never
    std::vector<int> shorten; ///< says less in these orders when space is short; empty: never
    bool continues = false;   ///< may run on to a second card
    bool repeats = false;     ///< stands on the second card too
    bool keep_whole = false;  ///< what stands below a heading stays with it where a page holds it
    Border border = Border::None;
    BorderOn border_on = BorderOn::All;
};

/// Whether the area takes this field.
bool takes(const TextArea& area, std::string_view field);

/// The x-height at which the area stands at this scale, and its type.
Length x_height_at(const TextArea& area, Scale scale);
TypeSize type_at(const TextArea& area, Scale scale, const typeset::FontSet& fonts);

/// The room between a border and the words inside; all 0 where no border is drawn. Above it is
/// what capitals want for looking as far from the line as the baseline does below.
struct Padding {
    Length side;
    Length above;
    Length below;
};
Padding padding_of(const Content& content, const TextArea& area, Length em);

// What every kind of area answers; see area.h.
void read(toml::Table& table, const PrintFields& fields, TextArea& area);
Result<Content, ContentFault> prepare(const TextArea& area, const wording::Print& print,
                                      Shaper& shaper);
Length natural_width(const Content& content, const TextArea& area, TypeSize type);
Extent measure(const Content& content, const TextArea& area, TypeSize type, Length width,
               RowHeights rows);
std::vector<Item> draw(const Content& content, const TextArea& area, TypeSize type, Rect place,
                       const Ink& ink);

} // namespace thawslip::layout

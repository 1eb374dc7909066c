#pragma once

#include "layout/align.h"
#include "layout/frame.h"
#include "typeset/face.h"
#include "typeset/paragraph.h"

#include <optional>
#include <string_view>

namespace thawslip::layout {

/// How a pen writes.
struct Hand {
    Length size; ///< 1 em
    typeset::Weight weight = typeset::Weight::Regular;
    Align align = Align::Left;
};

/// What such pages are written in.
inline constexpr Hand word_hand{Length::points(9)};

/// Their fine lines, for the reason crop marks have it (crop_marks.h).
inline constexpr Length line_thickness = Length::points(0.5);

/// Writes words and draws lines on a frame: for pages about stock and printers, whose places are
/// known beforehand. (A day's prints are fitted to their cells instead.)
///
/// The first character that cannot be set is kept; whoever holds the pen asks for it at the end.
class Pen {
public:
    /// Both must outlive the pen.
    Pen(Frame& frame, const typeset::FontSet& fonts) : frame_{frame}, fonts_{fonts} {}

    /// One line from, around or up to `baseline`, as the hand aligns it.
    void write(std::string_view text, Point baseline, const Hand& hand);
    /// A paragraph from `top_left` on, in lines of at most `width`. \returns where it ends below
    Length write_paragraph(std::string_view text, Point top_left, Length width, const Hand& hand);
    /// How wide one line is.
    Length width_of(std::string_view text, const Hand& hand);
    /// How much room a paragraph takes downwards.
    Length height_of(std::string_view text, Length width, const Hand& hand);

    /// Lines along the axes, `thickness` thick, centred on the way from end to end.
    void draw_across(Length from, Length to, Length y, Length thickness);
    void draw_down(Length from, Length to, Length x, Length thickness);

    const std::optional<typeset::UnsettableCharacter>& fault() const { return fault_; }

private:
    std::optional<typeset::PreparedParagraph> prepared(std::string_view text, const Hand& hand);
    void place(const typeset::Line& line, Point baseline, Length size);

    Frame& frame_;
    const typeset::FontSet& fonts_;
    std::optional<typeset::UnsettableCharacter> fault_;
};

} // namespace thawslip::layout

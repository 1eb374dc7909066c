#pragma once

#include <cstddef>
#include <vector>

namespace thawslip::typeset {

/// Whether `width` is no more than `measure`, both em. Sums of advances may differ in their last
/// digits, so that much is let pass.
inline bool fits(double width, double measure) {
    return width <= measure + 1e-9;
}

/// What a paragraph is made of for a line breaker: after D. E. Knuth and M. F. Plass, "Breaking
/// Paragraphs into Lines", Software: Practice and Experience 11 (1981), a box with the glue and
/// the penalty that follow it. Lines are set ragged right, so glue has its natural width, and
/// all stretch stands at the end of the line.
struct LineBox {
    double start = 0.0;   ///< where a line begins that begins with this box, em
    double end = 0.0;     ///< where a line ends that ends with it, em; glue left out
    double penalty = 0.0; ///< for ending a line here
};

/// A line of boxes first … last whose width is not simply end − start, since the letters of both
/// its ends touch.
struct ExactWidth {
    std::size_t first = 0;
    std::size_t last = 0;
    double width = 0.0;
};

struct LineBoxes {
    std::vector<LineBox> boxes;
    std::vector<ExactWidth> exact; ///< rising by first, then last

    double width(std::size_t first, std::size_t last) const;
};

/// Boxes first … last, both on the line.
struct LineRange {
    std::size_t first = 0;
    std::size_t last = 0;
    friend bool operator==(const LineRange&, const LineRange&) = default;
};

/// What lines cost, worst first.
struct LineCost {
    int lines = 0;
    int dangling = 0;      ///< a single short word is the last line
    double demerits = 0.0; ///< how uneven the lines are
    friend bool operator<(const LineCost& a, const LineCost& b) {
        return a.lines != b.lines         ? a.lines < b.lines
               : a.dangling != b.dangling ? a.dangling < b.dangling
                                          : a.demerits < b.demerits;
    }
    friend LineCost operator+(const LineCost& a, const LineCost& b) {
        return {a.lines + b.lines, a.dangling + b.dangling, a.demerits + b.demerits};
    }
};

/// What one line adds to the cost of a paragraph.
/// \pre its boxes fit, or it has but one
LineCost cost_of(const LineBoxes& boxes, LineRange line, double measure);

/// The lines of least cost for a measure of `measure` em, found by dynamic programming over all
/// ways to break; of equals, the one whose last lines begin later. Time grows with the number of
/// boxes times the boxes of one line.
std::vector<LineRange> total_fit(const LineBoxes& boxes, double measure);

/// How many lines total_fit gives: filling each line is the fewest.
int count_lines(const LineBoxes& boxes, double measure);

} // namespace thawslip::typeset

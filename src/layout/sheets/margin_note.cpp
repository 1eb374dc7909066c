#include "layout/sheets/margin_note.h"

#include "layout/layout.h"
#include "layout/sheets/pen.h"

#include <algorithm>

namespace thawslip::layout {
namespace {

constexpr auto weight = typeset::Weight::Bold;

/// As high as the words of a title, where the margin is wide: common practice, no source.
constexpr Length largest = Length::millimetres(6);

/// Free paper between two heights.
struct Band {
    Length from;
    Length to;
    Length height() const { return to - from; }
};

Band wider_margin(const Stock& stock, const Insets& unprinted) {
    const Rect first = stock.safe_at(0);
    const Rect last = stock.safe_at(stock.cells() - 1);
    const Band head{unprinted.top, first.origin.y};
    const Band foot{last.origin.y + last.size.height, stock.sheet.height - unprinted.bottom};
    return foot.height() > head.height() ? foot : head;
}

} // namespace

bool write_margin_note(Frame& frame, std::string_view words, const Stock& stock,
                       const Insets& unprinted, const typeset::FontSet& fonts) {
    const auto& metrics = fonts.metrics(weight);
    const double height = metrics.ascent + metrics.descent;
    const Band band = wider_margin(stock, unprinted);
    const Length width = stock.sheet.width - unprinted.left - unprinted.right;
    Pen pen{frame, fonts};
    Hand hand{std::min(band.height() / height, largest), weight, Align::Centre};
    if (hand.size > Length{}) {
        const Length wide = pen.width_of(words, hand);
        hand.size = wide > width ? hand.size * (width / wide) : hand.size;
    }
    if (hand.size * metrics.x_height < least_x_height) {
        return false;
    }
    const Length baseline =
        band.from + (band.height() - hand.size * height) / 2 + hand.size * metrics.ascent;
    pen.write(words, {unprinted.left + width / 2, baseline}, hand);
    return true;
}

} // namespace thawslip::layout

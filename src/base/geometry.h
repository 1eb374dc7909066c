#pragma once

#include "base/length.h"

namespace thawslip {

/// A place on a sheet: x to the right, y **down**, both from the sheet's top left corner.
/// Only the PDF renderer knows that PDF counts y upwards.
struct Point {
    Length x;
    Length y;
    friend constexpr bool operator==(const Point&, const Point&) = default;
    friend constexpr Point operator+(Point a, Point b) { return {a.x + b.x, a.y + b.y}; }
};

struct Size {
    Length width;
    Length height;
    friend constexpr bool operator==(const Size&, const Size&) = default;
};

/// An upright rectangle by its top left corner and its size.
struct Rect {
    Point origin;
    Size size;

    constexpr Length left() const { return origin.x; }
    constexpr Length top() const { return origin.y; }
    constexpr Length right() const { return origin.x + size.width; }
    constexpr Length bottom() const { return origin.y + size.height; }
    friend constexpr bool operator==(const Rect&, const Rect&) = default;

    /// The rectangle moved inwards by `margin` on all four sides.
    constexpr Rect inset(Length margin) const {
        return {{origin.x + margin, origin.y + margin},
                {size.width - margin * 2, size.height - margin * 2}};
    }

    /// Whether `inner` lies inside, give or take `slack` on each side.
    constexpr bool contains(const Rect& inner, Length slack = Length::points(1e-6)) const {
        return inner.left() >= left() - slack && inner.top() >= top() - slack &&
               inner.right() <= right() + slack && inner.bottom() <= bottom() + slack;
    }

    /// Whether the two share more than an edge (by more than `slack`).
    constexpr bool overlaps(const Rect& other, Length slack = Length::points(1e-6)) const {
        return left() < other.right() - slack && other.left() < right() - slack &&
               top() < other.bottom() - slack && other.top() < bottom() - slack;
    }
};

} // namespace thawslip

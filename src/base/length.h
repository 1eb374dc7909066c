#pragma once

#include <algorithm>
#include <compare>

namespace thawslip {

/// A distance on paper. Held in PDF points: 1 pt = 1/72 in.
///
/// There is no constructor from a bare number: every length in the program was
/// written down with its unit once, at the place where it entered.
class Length {
public:
    constexpr Length() = default;
    static constexpr Length points(double n) { return Length{n}; }
    static constexpr Length inches(double n) { return Length{n * 72.0}; }
    static constexpr Length millimetres(double n) { return Length{n * 72.0 / 25.4}; }

    constexpr double in_points() const { return points_; }
    constexpr double in_inches() const { return points_ / 72.0; }
    constexpr double in_millimetres() const { return points_ * 25.4 / 72.0; }

    friend constexpr auto operator<=>(Length, Length) = default;
    friend constexpr Length operator+(Length a, Length b) { return Length{a.points_ + b.points_}; }
    friend constexpr Length operator-(Length a, Length b) { return Length{a.points_ - b.points_}; }
    friend constexpr Length operator-(Length a) { return Length{-a.points_}; }
    friend constexpr Length operator*(Length a, double k) { return Length{a.points_ * k}; }
    friend constexpr Length operator*(double k, Length a) { return a * k; }
    friend constexpr Length operator/(Length a, double k) { return Length{a.points_ / k}; }
    friend constexpr double operator/(Length a, Length b) { return a.points_ / b.points_; }
    constexpr Length& operator+=(Length b) { return *this = *this + b; }
    constexpr Length& operator-=(Length b) { return *this = *this - b; }

private:
    constexpr explicit Length(double points) : points_{points} {}
    double points_ = 0.0;
};

namespace literals {
constexpr Length operator""_pt(long double n) {
    return Length::points(static_cast<double>(n));
}
constexpr Length operator""_mm(long double n) {
    return Length::millimetres(static_cast<double>(n));
}
constexpr Length operator""_in(long double n) {
    return Length::inches(static_cast<double>(n));
}
constexpr Length operator""_pt(unsigned long long n) {
    return Length::points(static_cast<double>(n));
}
constexpr Length operator""_mm(unsigned long long n) {
    return Length::millimetres(static_cast<double>(n));
}
constexpr Length operator""_in(unsigned long long n) {
    return Length::inches(static_cast<double>(n));
}
} // namespace literals

} // namespace thawslip

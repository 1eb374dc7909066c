#include "layout/sheets/calibration.h"

#include <algorithm>
#include <cmath>
#include <fmt/format.h>
#include <numbers>
#include <optional>

namespace thawslip::layout {
namespace {

constexpr double lowest_scale = 0.95;
constexpr double highest_scale = 1.05;
constexpr double largest_offset = 10.0;  // mm
constexpr double largest_skew = 1.0;     // degrees
constexpr double largest_residual = 0.5; // mm; a ruler is read to about 0.25 mm

using Kind = CalibrationFault::Kind;

/// Sums of products of the crosses' distances from their mean, in pt².
struct Moments {
    Point mean;
    double xx = 0.0;
    double xy = 0.0;
    double yy = 0.0;
    double determinant() const { return xx * yy - xy * xy; }
};

Moments moments_of(std::span<const CrossReading> readings) {
    Moments m;
    for (const auto& reading : readings) {
        m.mean = m.mean + reading.wanted;
    }
    const auto count = static_cast<double>(readings.size());
    m.mean = {m.mean.x / count, m.mean.y / count};
    for (const auto& reading : readings) {
        const double dx = (reading.wanted.x - m.mean.x).in_points();
        const double dy = (reading.wanted.y - m.mean.y).in_points();
        m.xx += dx * dx;
        m.xy += dx * dy;
        m.yy += dy * dy;
    }
    return m;
}

/// One printed coordinate as by_x·x + by_y·y + constant of the wanted point.
struct Row {
    double by_x = 0.0;
    double by_y = 0.0;
    Length constant;
};

Row fit(std::span<const CrossReading> readings, const Moments& m, Length Point::*coordinate) {
    Length mean;
    for (const auto& reading : readings) {
        mean += reading.printed.*coordinate;
    }
    mean = mean / static_cast<double>(readings.size());
    double x = 0.0;
    double y = 0.0;
    for (const auto& reading : readings) {
        const double value = (reading.printed.*coordinate - mean).in_points();
        x += (reading.wanted.x - m.mean.x).in_points() * value;
        y += (reading.wanted.y - m.mean.y).in_points() * value;
    }
    const double by_x = (m.yy * x - m.xy * y) / m.determinant();
    const double by_y = (m.xx * y - m.xy * x) / m.determinant();
    return {by_x, by_y, mean - by_x * m.mean.x - by_y * m.mean.y};
}

/// What the printer does to a page, in the same form as what undoes it.
Correction behaviour_from(std::span<const CrossReading> readings, const Moments& moments) {
    const Row x = fit(readings, moments, &Point::x);
    const Row y = fit(readings, moments, &Point::y);
    return {x.by_x, y.by_y, x.by_y, {x.constant, y.constant}, y.by_x};
}

Correction inverse(const Correction& a) {
    const double determinant = a.scale_x * a.scale_y - a.skew * a.skew_y;
    Correction b;
    b.scale_x = a.scale_y / determinant;
    b.scale_y = a.scale_x / determinant;
    b.skew = -a.skew / determinant;
    b.skew_y = -a.skew_y / determinant;
    const Point moved = b(a.offset); // b.offset is still nothing
    b.offset = {-moved.x, -moved.y};
    return b;
}

/// The first thing about this printer that is no printer's doing.
std::optional<CalibrationFault> implausible(const Correction& printer) {
    for (const double scale : {printer.scale_x, printer.scale_y}) {
        if (!(scale >= lowest_scale && scale <= highest_scale)) {
            return CalibrationFault{Kind::Scale, scale,
                                    scale < lowest_scale ? lowest_scale : highest_scale};
        }
    }
    // How far the page's upper edge and its left edge are turned.
    for (const double turn :
         {std::atan2(printer.skew_y, printer.scale_x), std::atan2(printer.skew, printer.scale_y)}) {
        const double degrees = std::abs(turn) * 180 / std::numbers::pi;
        if (!(degrees <= largest_skew)) {
            return CalibrationFault{Kind::Skew, degrees, largest_skew};
        }
    }
    for (const Length offset : {printer.offset.x, printer.offset.y}) {
        const double distance = std::abs(offset.in_millimetres());
        if (!(distance <= largest_offset)) {
            return CalibrationFault{Kind::Offset, distance, largest_offset};
        }
    }
    return std::nullopt;
}

double largest_misfit(std::span<const CrossReading> readings, const Correction& printer) {
    double largest = 0.0;
    for (const auto& reading : readings) {
        const Point expected = printer(reading.wanted);
        largest = std::max(largest, std::hypot((reading.printed.x - expected.x).in_millimetres(),
                                               (reading.printed.y - expected.y).in_millimetres()));
    }
    return largest;
}

} // namespace

Result<Correction, CalibrationFault> correction_from(std::span<const CrossReading> readings) {
    if (readings.size() < 3) {
        return Failure{
            CalibrationFault{Kind::TooFewCrosses, static_cast<double>(readings.size()), 3}};
    }
    const Moments moments = moments_of(readings);
    const double spread = moments.xx + moments.yy;
    if (!(moments.determinant() > 1e-4 * spread * spread)) {
        return Failure{CalibrationFault{Kind::CrossesInLine, 0, 0}};
    }
    const Correction printer = behaviour_from(readings, moments);
    if (const auto fault = implausible(printer)) {
        return Failure{*fault};
    }
    const double misfit = largest_misfit(readings, printer);
    if (misfit > largest_residual) {
        return Failure{CalibrationFault{Kind::Misread, misfit, largest_residual}};
    }
    return inverse(printer);
}

std::string in_words(const CalibrationFault& fault) {
    switch (fault.kind) {
    case Kind::TooFewCrosses:
        return fmt::format("{:.0f} crosses were measured, expected at least {:.0f}", fault.found,
                           fault.limit);
    case Kind::CrossesInLine: return "the crosses measured lie in one line, expected a triangle";
    case Kind::Scale:
        return fmt::format(
            "the page came out at {:.1f} % of its size, expected {:.0f} to {:.0f} %: "
            "print the ruler page at actual size, without \"fit to page\"",
            fault.found * 100, lowest_scale * 100, highest_scale * 100);
    case Kind::Offset:
        return fmt::format("the page is moved by {:.1f} mm, expected at most {:.0f} mm: look how "
                           "the paper lies in the tray",
                           fault.found, fault.limit);
    case Kind::Skew:
        return fmt::format("the page is crooked by {:.1f} degrees, expected at most {:.0f}: look "
                           "how the paper lies in the tray",
                           fault.found, fault.limit);
    case Kind::Misread:
        return fmt::format("the readings do not agree: a cross is {:.1f} mm from where the others "
                           "put it, expected at most {:.1f} mm: measure all of them again",
                           fault.found, fault.limit);
    }
    return {};
}

} // namespace thawslip::layout

#include "code/draw.h"

#include "code/capacity.h"
#include "code/mask.h"

#include <qrcodegen/qrcodegen.hpp>

namespace thawslip::code {
namespace {

qrcodegen::QrSegment drawable(const Segment& segment) {
    const std::string text{segment.text};
    switch (segment.mode) {
    case Mode::Numeric: return qrcodegen::QrSegment::makeNumeric(text.c_str());
    case Mode::Alphanumeric: return qrcodegen::QrSegment::makeAlphanumeric(text.c_str());
    case Mode::Byte: break;
    }
    return qrcodegen::QrSegment::makeBytes({text.begin(), text.end()});
}

qrcodegen::QrCode::Ecc level_of(Level level) {
    switch (level) {
    case Level::Low: return qrcodegen::QrCode::Ecc::LOW;
    case Level::Medium: return qrcodegen::QrCode::Ecc::MEDIUM;
    case Level::Quartile: return qrcodegen::QrCode::Ecc::QUARTILE;
    case Level::High: break;
    }
    return qrcodegen::QrCode::Ecc::HIGH;
}

} // namespace

Symbol draw(const std::vector<Segment>& segments, int version, Level level) {
    std::vector<qrcodegen::QrSegment> drawables;
    for (const Segment& segment : segments) {
        drawables.push_back(drawable(segment));
    }
    constexpr int any_mask = 0; // weighing all eight would take qrcodegen ten times as long
    const auto drawn = qrcodegen::QrCode::encodeSegments(drawables, level_of(level), version,
                                                         version, any_mask, false);
    const int side = side_of(version);
    Symbol symbol{version, level, any_mask, static_cast<std::uint16_t>(side), {}};
    symbol.dark.reserve(symbol.side * std::size_t{symbol.side});
    for (int y = 0; y < side; ++y) {
        for (int x = 0; x < side; ++x) {
            symbol.dark.push_back(drawn.getModule(x, y));
        }
    }
    return with_best_mask(symbol);
}

} // namespace thawslip::code

#include "code/symbol.h"

#define ZX_USE_UTF8 1
#include <ZXing/ReadBarcode.h>
#include <algorithm>
#include <cstddef>

namespace thawslip::code {
namespace {

constexpr std::size_t pixels_per_module = 2;
constexpr std::uint8_t black = 0;
constexpr std::uint8_t white = 255;

/// The symbol in its quiet zone as an 8-bit grey picture, `side` pixels square.
std::vector<std::uint8_t> picture(const Symbol& symbol, std::size_t side) {
    std::vector<std::uint8_t> pixels(side * side, white);
    for (std::size_t y = 0; y < symbol.side; ++y) {
        for (std::size_t x = 0; x < symbol.side; ++x) {
            if (!symbol.dark[y * symbol.side + x]) {
                continue;
            }
            for (std::size_t row = 0; row < pixels_per_module; ++row) {
                const std::size_t line = (y + quiet_zone_modules) * pixels_per_module + row;
                const std::size_t column = (x + quiet_zone_modules) * pixels_per_module;
                std::fill_n(pixels.begin() + static_cast<std::ptrdiff_t>(line * side + column),
                            pixels_per_module, black);
            }
        }
    }
    return pixels;
}

} // namespace

std::optional<std::string> read_back(const Symbol& symbol) {
    const std::size_t side = (symbol.side + 2 * quiet_zone_modules) * pixels_per_module;
    const std::vector<std::uint8_t> pixels = picture(symbol, side);
    const auto width = static_cast<int>(side);
    const ZXing::ImageView view{pixels.data(), width, width, ZXing::ImageFormat::Lum};
    const auto hints = ZXing::DecodeHints{}
                           .setFormats(ZXing::BarcodeFormat::QRCode)
                           .setIsPure(true)
                           .setBinarizer(ZXing::Binarizer::FixedThreshold);
    const ZXing::Result result = ZXing::ReadBarcode(view, hints);
    return result.isValid() ? std::optional{result.text()} : std::nullopt;
}

} // namespace thawslip::code

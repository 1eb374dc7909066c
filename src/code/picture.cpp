#include "code/picture.h"

#include <algorithm>
#include <cstddef>

namespace thawslip::code {

GreyPicture picture_of(const Symbol& symbol, int pixels_per_module) {
    constexpr std::uint8_t black = 0;
    constexpr std::uint8_t white = 255;
    const int side = (symbol.side + 2 * quiet_zone_modules) * pixels_per_module;
    const auto width = static_cast<std::size_t>(side);
    GreyPicture picture{side, side, std::vector<std::uint8_t>(width * width, white)};
    for (std::size_t y = 0; y < symbol.side; ++y) {
        for (std::size_t x = 0; x < symbol.side; ++x) {
            if (!symbol.dark[y * symbol.side + x]) {
                continue;
            }
            const auto scale = static_cast<std::size_t>(pixels_per_module);
            for (std::size_t row = 0; row < scale; ++row) {
                const std::size_t start = ((y + quiet_zone_modules) * scale + row) * width +
                                          (x + quiet_zone_modules) * scale;
                std::fill_n(picture.pixels.begin() + static_cast<std::ptrdiff_t>(start), scale,
                            black);
            }
        }
    }
    return picture;
}

} // namespace thawslip::code

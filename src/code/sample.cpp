#include "code/sample.h"

#include <cmath>

namespace thawslip::code {

std::uint8_t sample(const GreyPicture& picture, double x, double y) {
    constexpr std::uint8_t beyond = 128;
    const double left = std::floor(x);
    const double top = std::floor(y);
    const bool inside = // of what is no number, nothing is true
        left >= 0 && top >= 0 && left + 1 < picture.width && top + 1 < picture.height;
    if (!inside) {
        return beyond;
    }
    const auto width = static_cast<std::size_t>(picture.width);
    const std::size_t at = picture.index(static_cast<int>(left), static_cast<int>(top));
    const auto blend = [](double a, double b, double share) { return a + (b - a) * share; };
    const double upper = blend(picture.pixels[at], picture.pixels[at + 1], x - left);
    const double lower =
        blend(picture.pixels[at + width], picture.pixels[at + width + 1], x - left);
    return static_cast<std::uint8_t>(std::lround(blend(upper, lower, y - top)));
}

} // namespace thawslip::code

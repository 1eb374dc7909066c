#include "photo/photo.h"

#include "photo/formats.h"

#include <algorithm>
#include <array>
#include <fmt/format.h>

namespace thawslip::photo {
namespace {

template <std::size_t N>
bool starts_with(std::span<const std::uint8_t> bytes, const std::array<std::uint8_t, N>& magic) {
    return bytes.size() >= N && std::equal(magic.begin(), magic.end(), bytes.begin());
}

constexpr std::array<std::uint8_t, 8> png_magic = {0x89, 'P', 'N', 'G', '\r', '\n', 0x1A, '\n'};
constexpr std::array<std::uint8_t, 3> jpeg_magic = {0xFF, 0xD8, 0xFF};

/// Every four pixels as one: their mean.
code::GreyPicture halved(const code::GreyPicture& picture) {
    code::GreyPicture half{picture.width / 2, picture.height / 2, {}};
    half.pixels.reserve(static_cast<std::size_t>(half.width) *
                        static_cast<std::size_t>(half.height));
    const auto at = [&picture](int x, int y) {
        return static_cast<unsigned>(picture.pixels[picture.index(x, y)]);
    };
    for (int y = 0; y < half.height; ++y) {
        for (int x = 0; x < half.width; ++x) {
            const unsigned sum = at(2 * x, 2 * y) + at(2 * x + 1, 2 * y) + at(2 * x, 2 * y + 1) +
                                 at(2 * x + 1, 2 * y + 1);
            half.pixels.push_back(static_cast<std::uint8_t>((sum + 2) / 4));
        }
    }
    return half;
}

std::uint64_t pixels(const code::GreyPicture& picture) {
    return static_cast<std::uint64_t>(picture.width) * static_cast<std::uint64_t>(picture.height);
}

} // namespace

std::string refusal(std::uint64_t width, std::uint64_t height, const Limits& limits) {
    if (width == 0 || height == 0) {
        return "the picture has no pixels";
    }
    const auto side = static_cast<std::uint64_t>(limits.side);
    if (width > side || height > side || width * height > limits.pixels) {
        return fmt::format("the picture is {} x {} pixels; at most {} million are taken", width,
                           height, limits.pixels / 1'000'000);
    }
    return {};
}

Result<code::GreyPicture, PhotoFault> decode(std::span<const std::uint8_t> bytes,
                                             const Limits& limits) {
    if (bytes.size() > limits.bytes) {
        return Failure{
            PhotoFault{fmt::format("the file is larger than {} MiB", limits.bytes >> 20U)}};
    }
    const bool png = starts_with(bytes, png_magic);
    if (!png && !starts_with(bytes, jpeg_magic)) {
        return Failure{PhotoFault{"it is neither a PNG nor a JPEG picture"}};
    }
    auto decoded = png ? decode_png(bytes, limits) : decode_jpeg(bytes, limits);
    if (!decoded) {
        return decoded;
    }
    auto picture = std::move(decoded).value();
    while (pixels(picture) > limits.read_pixels) {
        picture = halved(picture);
    }
    return picture;
}

} // namespace thawslip::photo
